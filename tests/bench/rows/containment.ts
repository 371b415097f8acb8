import { join } from 'node:path';
import { openPlantAt } from '@libs/plant';
import { Database } from 'sqlite3';
import type { Contest, Row } from '../bench';
import { START, record } from '../recorded-log';
import { scratch } from '../scratch';
import { sectionLives } from '../section-life';

const OPERATION = 'operation-1-3';

/** The same question put to the log itself, in one statement: same operation and crew, and not shipped. */
const SCAN = `SELECT DISTINCT json_extract(body, '$.data.serial') AS serial FROM event
  WHERE json_extract(body, '$.schema') = 'WorkRecorded/1' AND json_extract(body, '$.data.operation') = ?
    AND json_extract(body, '$.data.crew') = ? AND stream NOT IN (
      SELECT stream FROM event WHERE json_extract(body, '$.schema') = 'SectionShipped/1')`;

const scan = (database: Database): Promise<readonly { readonly serial: string }[]> =>
  new Promise((done, fail) => {
    database.all<{ serial: string }>(SCAN, [OPERATION, 'walls'], (error: Error | null, rows) => {
      if (error === null) done(rows);
      else fail(error);
    });
  });

const milliseconds = async (work: () => Promise<unknown>): Promise<number> => {
  const began = performance.now();
  await work();
  return performance.now() - began;
};

const lastSerial = (size: number): string => {
  const serials = sectionLives(size).flatMap(({ event }) =>
    event.type === 'WorkRecorded' && event.data.operation === OPERATION ? [event.data.serial] : [],
  );
  return serials.at(-1) ?? '';
};

const prepare = async (size: number): Promise<Contest> => {
  const files = scratch();
  const file = files.file();
  await record(file, size);
  const plant = await openPlantAt({
    at: { file },
    keys: join(file, '..', 'keys'),
    name: 'Bench',
    clock: () => START,
  });
  const database = new Database(file);
  const failing = lastSerial(size);
  const ask = () => plant.asks.sharing(failing, OPERATION, { from: null, to: null });

  // Both must name the same sections, or one of them is fast at saying something else.
  const ours = ((await ask())?.sections ?? []).filter(({ shares }) => shares.includes('crew'));
  const theirs = (await scan(database)).filter(({ serial }) => serial !== failing);
  if (ours.length !== theirs.length) {
    throw new Error(`${ours.length} sections share it by ours, ${theirs.length} by the scan`);
  }
  return {
    ours: () => milliseconds(ask),
    peer: () => milliseconds(() => scan(database)),
    close: async () => {
      await new Promise<void>((done) => {
        database.close(() => {
          done();
        });
      });
      await plant.close();
      await files.clear();
    },
  };
};

/** Which sections still in the plant share what was found on one, beside one scan of the log. */
export const containmentRow: Row = {
  name: 'containment',
  unit: 'ms',
  better: 'faster',
  peerName: 'one SQL scan of the events',
  goal: 2,
  prepare,
};
