import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useQuestion } from '../../api/use-question';
import { useTell } from '../../api/use-tell';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { ChoiceField, TextField } from '../../ui/field';
import { Serial } from '../../ui/serial';
import { TableFrame } from '../../ui/table-frame';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';

type Log = AnswerOf<'labelLog'>;
type Row = Log['labels'][number];
const EVERYTHING = {};
const STANDINGS: Readonly<Record<Row['standing'], WordKey>> = {
  unused: 'label-log.unused',
  used: 'label-log.used',
  void: 'label-log.void',
  reclaimed: 'label-log.reclaimed',
  replaced: 'label-log.replaced',
};
const MANAGES_LABELS = ['quality-manager', 'administrator', 'agency-inspector'];
/** Of the drawer's unused labels these lie on top; of the others, the last ones. */
const UNUSED_SHOWN = 5;
const OTHERS_SHOWN = 20;

const shown = (number: string): string => `${number.slice(0, 3)} ${number.slice(3, 6)} ${number.slice(6)}`;

const Tallies = ({ counts }: { readonly counts: Log['counts'] }): ReactNode => {
  const { t } = useSpeech();
  const rows: readonly (readonly [WordKey, number])[] = [
    ['label-log.received', counts.received],
    ['label-log.unused', counts.unused],
    ['label-log.used', counts.used],
    ['label-log.void', counts.void],
    ['label-log.reclaimed', counts.reclaimed],
    ['label-log.replaced', counts.replaced],
  ];
  return (
    <dl className="tallies">
      {rows.map(([word, count]) => (
        <div key={word}>
          <dt>{t(word)}</dt>
          <dd>{count}</dd>
        </div>
      ))}
    </dl>
  );
};

const LabelRow = ({ row }: { readonly row: Row }): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  return (
    <tr>
      <td className="mono">{shown(row.number)}</td>
      <td>
        {t(STANDINGS[row.standing])}
        {row.replacedBy !== null && (
          <span className="quiet small"> {t('label-log.by', { number: shown(row.replacedBy) })}</span>
        )}
      </td>
      <td>
        {row.serial !== null && (
          <Link to={places.home(row.serial)}>
            <Serial of={row.serial} />
          </Link>
        )}
      </td>
      <td className="mono">{row.at === null ? '' : times.day(row.at)}</td>
    </tr>
  );
};

const Receive = ({ again }: { readonly again: () => void }): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(again);
  const [first, setFirst] = useState('');
  const [last, setLast] = useState('');
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    void telling.send('labelSupply', { first: first.trim(), last: last.trim() });
  };
  return (
    <form className="office-form no-print" onSubmit={submit}>
      <h3>{t('label-log.receive')}</h3>
      <TextField name={t('label-log.first')} value={first} change={setFirst} mono />
      <TextField name={t('label-log.last')} value={last} change={setLast} mono />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <button type="submit" className="button" disabled={telling.busy || first === '' || last === ''}>
        {t('label-log.record-receipt')}
      </button>
    </form>
  );
};

const VoidOne = ({ again }: { readonly again: () => void }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const telling = useTell(again);
  const [number, setNumber] = useState('');
  const [reason, setReason] = useState('');
  const reasons = (plant.reasons ?? []).filter((one) => one.for.includes('correction'));
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    void telling.send('labelVoid', { reason }, { number: number.trim().replaceAll(' ', '') });
  };
  return (
    <form className="office-form no-print" onSubmit={submit}>
      <h3>{t('label-log.void-one')}</h3>
      <TextField name={t('release.number')} value={number} change={setNumber} mono />
      <ChoiceField
        name={t('holds.reason')}
        value={reason}
        change={setReason}
        none={t('choose')}
        from={reasons.map(({ id, name }) => ({ id, says: say(name) }))}
      />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <button type="submit" className="button" disabled={telling.busy || number === '' || reason === ''}>
        {t('label-log.record-void')}
      </button>
    </form>
  );
};

/** Every label accounted for: received, used, void, taken back, replaced; and what does not agree. */
export const LabelLog = (): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSignedIn();
  const { answer, trouble, again } = useQuestion('labelLog', EVERYTHING);
  const [all, setAll] = useState(false);
  if (trouble !== null) return <TroubleNotice trouble={trouble} again={again} />;
  if (answer === null) return null;
  const unused = answer.labels.filter(({ standing }) => standing === 'unused').slice(-UNUSED_SHOWN);
  const others = answer.labels.filter(({ standing }) => standing !== 'unused');
  const rows = [...unused, ...(all ? others : others.slice(0, OTHERS_SHOWN))];
  return (
    <section className="stack" aria-labelledby="label-log">
      <h2 id="label-log">{t('label-log.title')}</h2>
      <Tallies counts={answer.counts} />
      <p>
        {answer.unaccounted.length === 0
          ? t('label-log.agrees')
          : t('label-log.differs', {
              count: answer.unaccounted.length,
              serials: answer.unaccounted.map(({ serial }) => serial).join(', '),
            })}
      </p>
      <div className="office-grid">
        <TableFrame name={t('label-log.title')} short>
          <table>
            <thead>
              <tr>
                <th scope="col">{t('release.number')}</th>
                <th scope="col">{t('label-log.standing')}</th>
                <th scope="col">{t('holds.section')}</th>
                <th scope="col">{t('label-log.day')}</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <LabelRow key={row.number} row={row} />
              ))}
            </tbody>
          </table>
        </TableFrame>
        {!all && others.length > OTHERS_SHOWN && (
          <div className="no-print">
            <button type="button" className="button" onClick={() => setAll(true)}>
              {t('label-log.all')}
            </button>
          </div>
        )}
        {me.roles.some((role) => MANAGES_LABELS.includes(role)) && (
          <div className="stack">
            <Receive again={again} />
            <VoidOne again={again} />
          </div>
        )}
      </div>
    </section>
  );
};
