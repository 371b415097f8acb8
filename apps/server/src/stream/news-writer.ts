import type { AnswerOf } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import type { Writable } from 'node:stream';
import { Subject, takeUntil } from 'rxjs';

type News = AnswerOf<'stream'>;

/** One server-sent event: `id` is the ledger position, so that Last-Event-ID says where to go on. */
const frame = (news: News): string =>
  `id: ${String(news.position)}\nevent: ledger\ndata: ${JSON.stringify(news)}\n\n`;

export type Feed = {
  readonly out: Writable;
  readonly news: Plant['news'];
  readonly after: number;
  readonly failed: (fault: unknown) => void;
};

/**
 * Writes news until stopped. A listener slower than the plant is not kept in memory: when its socket is
 * full the feed is let go, and taken up again from its own last position once the socket has drained.
 */
export const writeNews = ({ out, news, after, failed }: Feed): (() => void) => {
  const stop = new Subject<void>();
  let last = after;
  let ended = false;

  const listen = (): void => {
    if (ended) return;
    news(last)
      .pipe(takeUntil(stop))
      .subscribe({
        next: (item) => {
          last = item.position;
          if (out.write(frame(item))) return;
          stop.next();
          out.once('drain', listen);
        },
        error: failed,
      });
  };
  listen();

  return () => {
    ended = true;
    stop.next();
  };
};
