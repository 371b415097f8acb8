import type { ReactNode } from 'react';
import { dismiss, retry, seen, useDiffering, useUnsent } from '../api/outbox';
import type { Differing, Unsent } from '../api/outbox';
import { useSession } from '../session/session';
import { named } from '../words/named';
import { useTimes } from '../words/use-times';
import { useSpeech } from '../words/words';
import type { WordKey } from '../words/words';
import { Mark } from './mark';
import { Serial } from './serial';
import { TroubleSays } from './trouble';

/** What kind of entry it is, where no operation says so. */
const WHAT: Readonly<Record<string, WordKey>> = {
  signOff: 'queue.sign-off',
  defect: 'queue.defect',
  hold: 'queue.hold',
  release: 'queue.release',
  move: 'queue.move',
  start: 'queue.move',
  pull: 'queue.move',
  return: 'queue.move',
  shipment: 'queue.move',
  correction: 'queue.correction',
  wrongSerial: 'queue.correction',
};
type Told = {
  readonly route: string;
  readonly serial: string | null;
  readonly operation: string | null;
  readonly madeAt: string;
};

const What = ({ route, serial, operation, madeAt }: Told): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSession();
  const times = useTimes();
  const what =
    operation === null || plant === null
      ? t(WHAT[route] ?? 'queue.entry')
      : say(named(plant.operations, operation));
  return (
    <p>
      <strong>{what}</strong> {serial !== null && <Serial of={serial} />}{' '}
      <span className="quiet">{times.moment(madeAt)}</span>
    </p>
  );
};
const toldIn = ({ route, body, madeAt }: Unsent): Told => ({
  route,
  serial: body.serial ?? null,
  operation: body.operation ?? null,
  madeAt,
});

const Waiting = ({ entry }: { readonly entry: Unsent }): ReactNode => (
  <li className="finding">
    <Mark name="due" size={28} />
    <div className="grow stack tight">
      <What {...toldIn(entry)} />
    </div>
  </li>
);

/** The record did not take it: why, in words, and the two ways on. It never goes by itself. */
const Refused = ({ entry }: { readonly entry: Unsent }): ReactNode => {
  const { t } = useSpeech();
  return (
    <li className="finding">
      <Mark name="refused" size={28} />
      <div className="grow stack tight">
        <What {...toldIn(entry)} />
        {entry.trouble !== null && (
          <p>
            <TroubleSays trouble={entry.trouble} />
          </p>
        )}
        <p>{t('queue.refused-do')}</p>
        <div className="row">
          <button type="button" className="button" onClick={() => void retry(entry)}>
            {t('again')}
          </button>
          <button type="button" className="button" onClick={() => void dismiss(entry)}>
            {t('queue.put-right')}
          </button>
        </div>
      </div>
    </li>
  );
};

/** Recorded, but judged otherwise than here: the world had moved on. */
const JudgedOtherwise = ({ unlike }: { readonly unlike: Differing }): ReactNode => {
  const { t, say } = useSpeech();
  const times = useTimes();
  const { onlyThere, onlyHere } = unlike;
  return (
    <li className="finding">
      <Mark name="note" size={28} />
      <div className="grow stack tight">
        <What {...unlike} />
        <p>{t('queue.differs', { time: times.moment(unlike.madeAt) })}</p>
        {onlyThere.map(({ says }, at) => (
          <p key={at}>
            {t('queue.only-there')} {say(says)}
          </p>
        ))}
        {onlyHere.map(({ says }, at) => (
          <p key={at}>
            {t('queue.only-here')} {say(says)}
          </p>
        ))}
        <div>
          <button type="button" className="button" onClick={() => void seen(unlike)}>
            {t('queue.seen')}
          </button>
        </div>
      </div>
    </li>
  );
};

/** More than anyone reads; the count above says how many there are. */
const MOST = 50;

/** What lies on this device, one by one: what waits, what was not taken, what was judged otherwise. */
export const QueueList = (): ReactNode => {
  const unsent = useUnsent();
  const differing = useDiffering();
  return (
    <ul className="findings queue">
      {unsent
        .filter(({ state }) => state === 'refused')
        .map((entry) => (
          <Refused key={entry.key} entry={entry} />
        ))}
      {differing.map((unlike) => (
        <JudgedOtherwise key={unlike.key} unlike={unlike} />
      ))}
      {unsent
        .filter(({ state }) => state === 'waiting')
        .slice(0, MOST)
        .map((entry) => (
          <Waiting key={entry.key} entry={entry} />
        ))}
    </ul>
  );
};
