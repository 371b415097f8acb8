import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { useTell } from '../../api/use-tell';
import { places } from '../../router/places';
import { Link, goTo } from '../../router/router';
import { mayDecide, useSignedIn } from '../../session/session';
import { Serial } from '../../ui/serial';
import { TableFrame } from '../../ui/table-frame';
import { TroubleNotice } from '../../ui/trouble';
import { named } from '../../words/named';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import { SHARED, SHARED_WORDS } from './shared-words';
import type { Shared } from './shared-words';

type Answer = AnswerOf<'sharing'>;
type Row = Answer['sections'][number];
type Props = { readonly serial: string; readonly operation: string; readonly defect: string | null };

const SharingRow = ({
  row,
  on,
  toggle,
}: {
  readonly row: Row;
  readonly on: boolean;
  readonly toggle: (on: boolean) => void;
}): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const times = useTimes();
  return (
    <tr>
      <td data-column={t('holds.section')}>
        <label className="check">
          <input type="checkbox" checked={on} onChange={(event) => toggle(event.target.checked)} />
          <Serial of={row.serial} />
        </label>
      </td>
      <td data-column={t('agency.stands')}>
        {row.station === null ? '' : say(named(plant.stations, row.station))}
      </td>
      <td data-column={t('contain.shares')}>{row.shares.map((by) => t(SHARED_WORDS[by])).join(', ')}</td>
      <td className="mono" data-column={t('contain.done')}>
        {row.doneAt === null ? '' : times.moment(row.doneAt)}
      </td>
      <td data-column={t('contain.seen')}>{t(row.covered ? 'contain.covered' : 'contain.in-sight')}</td>
    </tr>
  );
};

type ByProps = {
  readonly by: ReadonlySet<Shared>;
  readonly change: (by: ReadonlySet<Shared>) => void;
};
const ByChoice = ({ by, change }: ByProps): ReactNode => {
  const { t } = useSpeech();
  const toggled = (one: Shared): ReadonlySet<Shared> =>
    new Set(by.has(one) ? [...by].filter((other) => other !== one) : [...by, one]);
  return (
    <div className="choices" role="group" aria-label={t('contain.by')}>
      {SHARED.filter((one) => one !== 'span').map((one) => (
        <button
          key={one}
          type="button"
          className="button"
          aria-pressed={by.has(one)}
          onClick={() => change(toggled(one))}
        >
          {t(SHARED_WORDS[one])}
        </button>
      ))}
    </div>
  );
};

/** Which other sections may share what was found: chosen by what is shared, held in one go. */
export const Sharing = ({ serial, operation, defect }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { me, plant } = useSignedIn();
  const { answer, trouble, again } = useQuestion('sharing', { serial, operation });
  const [by, setBy] = useState<ReadonlySet<Shared>>(new Set(['crew', 'shift', 'lot', 'instrument']));
  const [off, setOff] = useState<ReadonlySet<string>>(new Set());
  const telling = useTell(() => goTo(places.containment));
  const sharing = (answer?.sections ?? []).filter(({ shares }) => shares.some((one) => by.has(one)));
  const chosen = sharing.filter((row) => !off.has(row.serial));
  const name = say(named(plant.operations, operation));
  const contain = (hold: boolean): void => {
    const sections = chosen.map((row) => ({ serial: row.serial, shares: [...row.shares] }));
    void telling.send('containment', { serial, defect, operation, by: [...by], sections, hold });
  };
  const toggle = (row: string, on: boolean): void =>
    setOff((before) => new Set(on ? [...before].filter((one) => one !== row) : [...before, row]));
  return (
    <main className="page stack" id="main" aria-busy={answer === null}>
      <div className="page-head">
        <div>
          <h1>{t('contain.sharing', { count: sharing.length, operation: name, serial })}</h1>
          {answer !== null && <p>{t('contain.compared', { count: answer.looked })}</p>}
        </div>
        <Link className="button" to={places.containment}>
          {t('nav.containment')}
        </Link>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      <ByChoice by={by} change={setBy} />
      <TableFrame name={t('contain.sharing', { count: sharing.length, operation: name, serial })}>
        <table className="stacked">
          <thead>
            <tr>
              <th scope="col">{t('holds.section')}</th>
              <th scope="col">{t('agency.stands')}</th>
              <th scope="col">{t('contain.shares')}</th>
              <th scope="col">{t('contain.done')}</th>
              <th scope="col">{t('contain.seen')}</th>
            </tr>
          </thead>
          <tbody>
            {sharing.map((row) => (
              <SharingRow
                key={row.serial}
                row={row}
                on={!off.has(row.serial)}
                toggle={(on) => toggle(row.serial, on)}
              />
            ))}
          </tbody>
        </table>
      </TableFrame>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      {mayDecide(me) && (
        <div className="row">
          <button
            type="button"
            className="button primary big"
            disabled={telling.busy || chosen.length === 0}
            onClick={() => contain(true)}
          >
            {t('contain.hold-all', { count: chosen.length })}
          </button>
          <button
            type="button"
            className="button"
            disabled={telling.busy || chosen.length === 0}
            onClick={() => contain(false)}
          >
            {t('contain.list-only')}
          </button>
        </div>
      )}
      <p className="governing">{say(plant.governing)}</p>
    </main>
  );
};
