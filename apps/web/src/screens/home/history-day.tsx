import { useState } from 'react';
import type { ReactNode } from 'react';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { Serial } from '../../ui/serial';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import { FindingList } from '../../ui/finding-list';
import { asRead } from '../../ui/metric';
import { Photos } from '../../ui/photos';
import { named } from '../../words/named';
import { markOf, photosOf, valuesOf } from './entries';
import type { Entry } from './entries';
import type { Labels } from './use-labels';

type ByPosition = ReadonlyMap<number, Entry>;
type EntryProps = {
  readonly entry: Entry;
  readonly several: boolean;
  readonly byPosition: ByPosition;
  readonly labels: Labels;
};

/** New values stand; the ones they replace stay beside them, struck through. */
const Values = ({ entry, byPosition, labels }: Omit<EntryProps, 'several'>): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const before = entry.corrects === null ? undefined : byPosition.get(entry.corrects);
  const old = new Map(
    (before === undefined ? [] : valuesOf(before)).map((value) => [value.characteristic, value]),
  );
  const values = valuesOf(entry);
  const read = (value: string, unit: string | null): string =>
    value === 'yes' || value === 'no' ? t(value) : asRead(say(named(plant.texts, value)), unit);
  if (values.length === 0) return null;
  return (
    <ul className="entry-values">
      {values.map(({ characteristic, value, unit }, at) => {
        const was = old.get(characteristic);
        const changed = was !== undefined && was.value !== value;
        return (
          <li key={at}>
            <span className="quiet">{say(labels(entry.data['operation'], characteristic))}:</span>{' '}
            {changed && (
              <del className="mono">
                <span className="sr-only">{t('history.was')} </span>
                {read(was.value, was.unit)}
              </del>
            )}{' '}
            <span className={entry.correctedBy.length > 0 ? 'mono struck' : 'mono'}>{read(value, unit)}</span>
          </li>
        );
      })}
    </ul>
  );
};

const MEANINGS = {
  did: 'meaning.did',
  inspected: 'meaning.inspected',
  approved: 'meaning.approved',
} as const;

const Standing = ({ entry }: { readonly entry: Entry }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const times = useTimes();
  const station = plant.stations.find(({ id }) => id === entry.station);
  return (
    <p className="entry-meta small">
      <span>{entry.by}</span>
      {entry.signature !== null && (
        <strong>
          {t('history.signed', { meaning: t(MEANINGS[entry.signature.meaning]) })}{' '}
          {times.moment(entry.signature.at)}
        </strong>
      )}
      {station !== undefined && <span>{say(station.name)}</span>}
      {entry.late && (
        <strong className="late">{t('history.late', { at: times.moment(entry.recordedAt) })}</strong>
      )}
      {entry.corrects !== null && <a href={`#entry-${String(entry.corrects)}`}>{t('history.corrects')}</a>}
      {entry.correctedBy.map((position) => (
        <a key={position} href={`#entry-${String(position)}`}>
          {t('history.corrected')}
        </a>
      ))}
    </p>
  );
};

const Proof = ({ entry }: { readonly entry: Entry }): ReactNode => {
  const { t } = useSpeech();
  const [open, setOpen] = useState(false);
  return (
    <div className="entry-proof no-print">
      <button
        type="button"
        className="button plain entry-more"
        aria-expanded={open}
        onClick={() => setOpen(!open)}
      >
        {t('history.more')}
      </button>
      {open && (
        <div className="small">
          <p>
            {t('history.entry', { position: entry.position })}
            {entry.revision !== null && ` · ${t('history.revision', { revision: entry.revision })}`}
          </p>
          <p>
            {t('history.leaf')}: <code className="leaf">{entry.leaf}</code>
          </p>
          <pre className="mono">{JSON.stringify(entry.data, null, 2)}</pre>
        </div>
      )}
    </div>
  );
};

const HistoryEntry = (props: EntryProps): ReactNode => {
  const { say } = useSpeech();
  const times = useTimes();
  const { entry, several } = props;
  return (
    <li className="entry" id={`entry-${String(entry.position)}`}>
      <time className="mono entry-time" dateTime={entry.occurredAt}>
        {times.time(entry.occurredAt)}
      </time>
      <Mark name={markOf(entry)} />
      <div className="entry-body">
        <p className="entry-says">
          {several && (
            <span className="entry-serial">
              <Serial of={entry.serial} />
            </span>
          )}
          <span className={entry.correctedBy.length > 0 ? 'struck' : undefined}>{say(entry.says)}</span>
        </p>
        <Standing entry={entry} />
        <Values {...props} />
        <Photos of={photosOf(entry)} />
        {entry.note !== null && <blockquote className="entry-note">{entry.note}</blockquote>}
        {entry.findings.length > 0 && <FindingList findings={entry.findings} />}
      </div>
      <Proof entry={entry} />
    </li>
  );
};

type DayProps = Omit<EntryProps, 'entry'> & { readonly day: string; readonly entries: readonly Entry[] };

export const HistoryDay = ({ day, entries, ...rest }: DayProps): ReactNode => (
  <section className="day">
    <h2>{day}</h2>
    <ol>
      {entries.map((entry) => (
        <HistoryEntry key={entry.position} entry={entry} {...rest} />
      ))}
    </ol>
  </section>
);
