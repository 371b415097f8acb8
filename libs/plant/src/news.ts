import { eventSays } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import type { Envelope } from '@libs/kernel';
import { typeOf } from '@libs/ledger';
import { Observable } from 'rxjs';
import type { Names } from './names';
import type { Workings } from './workings';

type News = AnswerOf<'stream'>;

/** Events read at a time: small enough that a slow reader holds little, large enough to catch up fast. */
const PAGE = 500;

/**
 * Everything after a position, then live. News only says that there is more; what there is, is read from the ledger
 * from the position reached: so nothing is missed and nothing comes twice, however often news is lost or repeated.
 * One page is read at a time, and no further than the reader still listens.
 */
export const newsFrom = ({ ledger, names }: Workings, after: number): Observable<News> =>
  new Observable((reader) => {
    let position = after;
    let knownHead = after;
    let isReading = false;
    const isHeard = (): boolean => !reader.closed;

    const readOn = async (): Promise<void> => {
      while (isHeard() && position < knownHead) {
        const page = await ledger.after(position, PAGE);
        if (page.length === 0) {
          knownHead = position;
          return;
        }
        for (const event of page) {
          if (!isHeard()) return;
          reader.next(newsOf(event, names.ofRevision(event.revision)));
          position = event.position;
        }
      }
    };

    const wake = (head: number): void => {
      knownHead = Math.max(knownHead, head);
      if (isReading) return;

      isReading = true;
      readOn()
        .catch((error: unknown) => {
          reader.error(error);
        })
        .finally(() => {
          isReading = false;
          // News that came after the last page was asked for.
          if (isHeard() && position < knownHead) wake(knownHead);
        });
    };

    const heard = ledger.news.subscribe({
      next: wake,
      error: (error: unknown) => {
        reader.error(error);
      },
      complete: () => {
        reader.complete();
      },
    });
    ledger.head().then(wake, (error: unknown) => {
      reader.error(error);
    });
    return () => {
      heard.unsubscribe();
    };
  });

const newsOf = ({ schema, position, stream, station, occurredAt, data }: Envelope, names: Names): News => {
  const type = typeOf(schema);
  return {
    position,
    type,
    stream,
    serial: typeof data['serial'] === 'string' ? data['serial'] : null,
    station,
    occurredAt,
    says: eventSays(type, data, names),
  };
};
