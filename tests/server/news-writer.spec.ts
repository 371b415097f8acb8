import { PassThrough } from 'node:stream';
import type { AnswerOf } from '@libs/contracts';
import { Observable } from 'rxjs';
import { writeNews } from '../../apps/server/src/stream/news-writer';
import { readStream } from '../support/server-sent-events';

const LAST = 200;

const newsAt = (position: number): AnswerOf<'stream'> => ({
  position,
  type: 'WorkRecorded',
  stream: 'section/T-1',
  serial: 'T-1',
  station: null,
  occurredAt: '2026-03-02T08:00:00.000-06:00',
  says: { en: 'x'.repeat(100), es: 'x' },
});

describe('news for a listener slower than the plant', () => {
  it('is let go while its socket is full, and taken up again with nothing missed or repeated', async () => {
    const asked: number[] = [];
    const out = new PassThrough({ highWaterMark: 1_000 });
    const news = (after: number): Observable<AnswerOf<'stream'>> =>
      new Observable((reader) => {
        asked.push(after);
        for (let position = after + 1; position <= LAST && !reader.closed; position += 1)
          reader.next(newsAt(position));
      });
    writeNews({ out, news, after: 0, failed: (fault) => out.destroy(fault as Error) });
    expect(out.writableLength + out.readableLength).toBeLessThan(5_000);

    let text = '';
    for await (const chunk of out.setEncoding('utf8')) {
      text += String(chunk);
      if (text.includes(`id: ${String(LAST)}\n`)) break;
    }
    expect(readStream(text).events.map(({ id }) => Number(id))).toStrictEqual(
      Array.from({ length: LAST }, (_, n) => n + 1),
    );
    expect(asked.length).toBeGreaterThan(2);
  });

  it('is not asked for any more once it has stopped', () => {
    const out = new PassThrough({ highWaterMark: 1 });
    let asked = 0;
    const news = (after: number): Observable<AnswerOf<'stream'>> =>
      new Observable((reader) => {
        asked += 1;
        reader.next(newsAt(after + 1));
      });
    const stop = writeNews({ out, news, after: 0, failed: () => undefined });
    stop();
    out.emit('drain');
    expect(asked).toBe(1);
  });
});
