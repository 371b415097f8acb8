import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { useLive } from '../../api/live';
import { useQuestion } from '../../api/use-question';
import { useSignedIn } from '../../session/session';
import { useSoon } from '../../ui/soon';
import { TableFrame } from '../../ui/table-frame';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { Calibrate, Qualify } from './equipment-forms';
import { LotActions } from './lot-actions';
import { Qualifications } from './qualifications';
import { LotReach, InstrumentReach } from './reach';
import { Standing } from './standing';
import { Unmount } from './unmount';
import '../release/release.css';
import './equipment.css';

type Equipment = AnswerOf<'equipment'>;
const EVERYTHING = {};
const MANAGERS = ['quality-manager', 'administrator'];

type Opened = { readonly of: 'lot' | 'instrument'; readonly id: string } | null;
type Open = (opened: Opened) => void;

const Reached = ({
  open,
  of,
  id,
}: {
  readonly open: Open;
  readonly of: 'lot' | 'instrument';
  readonly id: string;
}): ReactNode => {
  const { t } = useSpeech();
  return (
    <button type="button" className="button plain no-print" onClick={() => open({ of, id })}>
      {t(of === 'lot' ? 'equipment.where' : 'equipment.measured')}
    </button>
  );
};

const Instruments = ({
  rows,
  open,
}: {
  readonly rows: Equipment['instruments'];
  readonly open: Open;
}): ReactNode => {
  const { t, say } = useSpeech();
  return (
    <section className="stack">
      <h2>{t('equipment.instruments')}</h2>
      <TableFrame name={t('equipment.instruments')} short>
        <table>
          <thead>
            <tr>
              <th scope="col">{t('equipment.number')}</th>
              <th scope="col">{t('equipment.kind')}</th>
              <th scope="col">{t('equipment.due')}</th>
              <th scope="col">{t('equipment.standing')}</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.instrument}>
                <th scope="row" className="mono">
                  {row.instrument}
                </th>
                <td>{say(row.kindName)}</td>
                <td className="mono">{row.dueOn ?? ''}</td>
                <td>
                  <Standing is={row.standing} of="instrument" />
                </td>
                <td>
                  <Reached open={open} of="instrument" id={row.instrument} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </section>
  );
};

type LotsProps = {
  readonly rows: Equipment['lots'];
  readonly open: Open;
  readonly again: () => void;
};

const LotTable = ({ rows, open, again }: LotsProps): ReactNode => {
  const { t, say } = useSpeech();
  return (
    <TableFrame name={t('equipment.lots')} short>
      <table>
        <thead>
          <tr>
            <th scope="col">{t('equipment.number')}</th>
            <th scope="col">{t('equipment.kind')}</th>
            <th scope="col">{t('equipment.mounted')}</th>
            <th scope="col">{t('equipment.last-day')}</th>
            <th scope="col">{t('equipment.standing')}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.lot}>
              <th scope="row" className="mono">
                {row.lot}
              </th>
              <td>{say(row.kindName)}</td>
              <td>{row.mountedAt.map(({ name }) => say(name)).join(', ')}</td>
              <td className="mono">{row.usableUntil ?? ''}</td>
              <td>
                <Standing is={row.standing} of="lot" />
              </td>
              <td>
                <Reached open={open} of="lot" id={row.lot} />
                <LotActions row={row} again={again} />
                <Unmount row={row} again={again} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
};

const TROUBLE = ['bad', 'over', 'soon'];

/** What is in trouble first, then what is in use; what was used up long ago only on demand. */
const Lots = ({ rows, open, again }: LotsProps): ReactNode => {
  const { t } = useSpeech();
  const trouble = rows.filter(({ standing }) => TROUBLE.includes(standing));
  const good = rows.filter((row) => !trouble.includes(row));
  const shown = [...trouble, ...good.filter(({ mountedAt }) => mountedAt.length > 0)];
  const others = rows.filter((row) => !shown.includes(row));
  return (
    <section className="stack">
      <h2>{t('equipment.lots')}</h2>
      <LotTable rows={shown} open={open} again={again} />
      {others.length > 0 && (
        <details>
          <summary>{t('equipment.other-lots', { count: others.length })}</summary>
          <LotTable rows={others} open={open} again={again} />
        </details>
      )}
    </section>
  );
};

/** What runs out and what may not be used; from a lot or a gauge to every section it is in or has measured. */
export const EquipmentScreen = (): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSignedIn();
  const { answer, trouble, again } = useQuestion('equipment', EVERYTHING);
  const [opened, setOpened] = useState<Opened>(null);
  const soon = useSoon(again);
  useLive(soon);
  const manages = me.roles.some((role) => MANAGERS.includes(role));
  return (
    <main className="page" id="main" aria-busy={answer === null}>
      <h1>{t('nav.equipment')}</h1>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {opened !== null && (
        <section className="stack" aria-live="polite">
          {opened.of === 'lot' ? <LotReach lot={opened.id} /> : <InstrumentReach instrument={opened.id} />}
          <button type="button" className="button no-print" onClick={() => setOpened(null)}>
            {t('equipment.close')}
          </button>
        </section>
      )}
      {answer !== null && (
        <div className="equipment">
          <Instruments rows={answer.instruments} open={setOpened} />
          <Lots rows={answer.lots} open={setOpened} again={again} />
          <Qualifications rows={answer.qualifications} manages={manages} again={again} />
          {manages && <Calibrate again={again} />}
          {manages && <Qualify again={again} />}
        </div>
      )}
    </main>
  );
};
