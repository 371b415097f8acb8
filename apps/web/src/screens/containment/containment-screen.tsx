import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { useLive } from '../../api/live';
import { useQuestion } from '../../api/use-question';
import { useTell } from '../../api/use-tell';
import { places } from '../../router/places';
import { Link, useAddress } from '../../router/router';
import { mayDecide, useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { Serial } from '../../ui/serial';
import { useSoon } from '../../ui/soon';
import { TableFrame } from '../../ui/table-frame';
import { TroubleNotice } from '../../ui/trouble';
import { named } from '../../words/named';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import { Sharing } from './sharing';
import { SHARED_WORDS } from './shared-words';
import '../release/release.css';

type Containment = AnswerOf<'containments'>['containments'][number];
type Contained = Containment['sections'][number];
const EVERYTHING = {};

const STANDINGS = {
  waiting: 'contain.waiting',
  found: 'contain.found',
  clear: 'contain.clear',
  released: 'contain.released',
} as const;
const MARKS = { waiting: 'held', found: 'refused', clear: 'proven', released: 'proven' } as const;

/** `?serial=&operation=` asks who shares; without them, what is being contained. */
export const ContainmentScreen = (): ReactNode => {
  const { searchParams } = useAddress();
  const serial = searchParams.get('serial');
  const operation = searchParams.get('operation');
  return serial !== null && operation !== null ? (
    <Sharing serial={serial} operation={operation} defect={searchParams.get('defect')} />
  ) : (
    <Containments />
  );
};

type RowProps = {
  readonly containment: Containment;
  readonly section: Contained;
  readonly again: () => void;
};
const ContainedRow = ({ containment, section, again }: RowProps): ReactNode => {
  const { t, say } = useSpeech();
  const { me, plant } = useSignedIn();
  const telling = useTell(again);
  const look = (found: boolean): void => {
    void telling.send(
      'containedLook',
      { serial: section.serial, found },
      { containment: containment.containment },
    );
  };
  return (
    <tr>
      <td data-column={t('holds.section')}>
        <Mark name={MARKS[section.standing]} size={20} />{' '}
        <Link to={places.home(section.serial)}>
          <Serial of={section.serial} />
        </Link>
      </td>
      <td data-column={t('agency.stands')}>
        {section.station === null ? t('contain.gone') : say(named(plant.stations, section.station))}
      </td>
      <td data-column={t('contain.shares')}>{section.shares.map((by) => t(SHARED_WORDS[by])).join(', ')}</td>
      <td data-column={t('contain.standing')}>{t(STANDINGS[section.standing])}</td>
      <td>
        {section.standing === 'waiting' && mayDecide(me) && (
          <div className="choices no-print">
            <button type="button" className="button" disabled={telling.busy} onClick={() => look(false)}>
              {t('contain.nothing-found')}
            </button>
            <button type="button" className="button" disabled={telling.busy} onClick={() => look(true)}>
              {t('contain.same-found')}
            </button>
          </div>
        )}
        {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      </td>
    </tr>
  );
};

const OneContainment = ({
  containment,
  again,
}: {
  readonly containment: Containment;
  readonly again: () => void;
}): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const times = useTimes();
  const title = t('contain.of', {
    operation: say(named(plant.operations, containment.operation)),
    serial: containment.serial,
  });
  return (
    <section className="stack tight" aria-label={title}>
      <h2>{title}</h2>
      <p className="quiet">
        {times.moment(containment.at)} ·{' '}
        {t('contain.progress', { open: containment.open, count: containment.sections.length })}
      </p>
      <TableFrame name={title}>
        <table className="stacked">
          <thead>
            <tr>
              <th scope="col">{t('holds.section')}</th>
              <th scope="col">{t('agency.stands')}</th>
              <th scope="col">{t('contain.shares')}</th>
              <th scope="col">{t('contain.standing')}</th>
              <th scope="col">
                <span className="sr-only">{t('contain.look')}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {containment.sections.map((section) => (
              <ContainedRow key={section.serial} containment={containment} section={section} again={again} />
            ))}
          </tbody>
        </table>
      </TableFrame>
    </section>
  );
};

const Containments = (): ReactNode => {
  const { t } = useSpeech();
  const { answer, trouble, again } = useQuestion('containments', EVERYTHING);
  const soon = useSoon(again);
  useLive(soon);
  const all = answer?.containments ?? [];
  const open = all.reduce((sum, one) => sum + one.open, 0);
  return (
    <main className="page stack" id="main" aria-busy={answer === null}>
      <div className="page-head">
        <div>
          <h1>{answer === null ? t('nav.containment') : t('contain.title', { count: open })}</h1>
          <p>{t('contain.how')}</p>
        </div>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {all.map((containment) => (
        <OneContainment key={containment.containment} containment={containment} again={again} />
      ))}
    </main>
  );
};
