import type { AnswerOf } from '@libs/contracts';
import type { Words } from '@libs/judge';
import type { Ledger } from '@libs/ledger';
import { auditTime, concatMap, defer, filter, from, merge, mergeMap, of } from 'rxjs';
import type { Observable } from 'rxjs';
import type { Asked } from './questions/asked';
import { signalsQuestion } from './questions/signals';

type Alarm = NonNullable<AnswerOf<'signals'>['stations'][number]['alarm']>;

/** An alarm that nobody has given a cause yet. */
export type OpenAlarm = {
  /** Station and day: the same alarm has the same name whoever asks, and whenever. */
  readonly id: string;
  readonly station: string;
  readonly name: Words;
  readonly day: string;
  readonly change: Alarm['change'];
};

/** Charts are read anew at most this often, however fast the line records: a signal is told in seconds, not at once. */
const LOOK_EVERY_MS = 5_000;

/** The open items of all charts: what waits for a person to say its cause. */
export const openAlarms = (asked: Asked) => async (): Promise<readonly OpenAlarm[]> => {
  const { stations } = await signalsQuestion(asked)({ from: null, to: null });
  return stations.flatMap(({ station, name, alarm }) =>
    alarm === null || alarm.acknowledged !== null
      ? []
      : [{ id: `${station}/${alarm.day}`, station, name, day: alarm.day, change: alarm.change }],
  );
};

/**
 * Every alarm that is open when somebody begins to listen, and each one that opens from then on, once. Whoever must
 * tell others of an alarm once in all keeps the ids it has told: they are the same after a restart. A late entry may
 * move an alarm to another day; it is then another alarm. Stop listening before the plant is closed.
 */
export const alarmsOpened = (asked: Asked, ledger: Pick<Ledger, 'news'>): Observable<OpenAlarm> =>
  defer(() => {
    const told = new Set<string>();
    return merge(of(0), ledger.news.pipe(auditTime(LOOK_EVERY_MS))).pipe(
      concatMap(() => from(openAlarms(asked)())),
      mergeMap((open) => from(open)),
      filter(({ id }) => {
        const isNew = !told.has(id);
        told.add(id);
        return isNew;
      }),
    );
  });
