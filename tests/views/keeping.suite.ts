import type { OpenLedger } from '@libs/ledger/typeorm';
import { VIEWS } from '@libs/views';
import { catchUp, viewKeeper, viewReader } from '@libs/views/typeorm';
import type { ViewKeeper } from '@libs/views/typeorm';
import type { ViewReader } from '@libs/views';
import fc from 'fast-check';
import { anyHistory } from '../support/any-history';
import type { AnyEntry } from '../support/any-history';
import type { LedgerHouse } from '../support/ledger-house';
import { toldOf } from '../support/told-units';
import { viewTables } from '../support/view-tables';

const silent = (): void => undefined;

/** Told a few at a time, so that entries of one section share a commit. */
const tell = async (
  ledger: OpenLedger,
  history: readonly AnyEntry[],
  from = 0,
  keeper?: ViewKeeper,
): Promise<void> => {
  for (let next = 0; next < history.length; next += 7) {
    await Promise.all(
      history
        .slice(next, next + 7)
        .map(({ serial, occurredAt, event }, index) =>
          ledger.ask(toldOf(`key-${from + next + index}`, { kind: 'section', serial }, occurredAt, [event])),
        ),
    );
    // Written now and then, so that details are come back to.
    if (next % 3 === 0) await keeper?.current();
  }
};

const EVER = { from: '2000-01-01', to: '2100-01-01' };

/** The marks of a station's sections come to what its counters say: the charts and the yields are of the same sections. */
const expectRunsAsCounted = async (views: ViewReader): Promise<void> => {
  const runs = await views.runs(null, EVER);
  const counted = await views.yieldByStation(EVER);
  expect([...runs.keys()].sort()).toStrictEqual([...counted.keys()].sort());
  expect([...(await views.yieldOf(EVER, {}))].sort()).toStrictEqual([...counted].sort());
  for (const [station, marks] of runs) {
    const clean = Array.from(marks).filter((mark) => mark === '1').length;
    expect({ station, left: marks.length, clean }).toMatchObject({
      left: counted.get(station)?.left,
      clean: counted.get(station)?.clean,
    });
    expect((await views.runs(station, EVER)).get(station)).toBe(marks);
    expect(Array.isArray(await views.found(station, EVER))).toBe(true);
  }
};

/**
 * Goal: whatever is entered, in whatever order, upkeep behind the writer and a rebuild from the log come to the same
 * bytes. Method: random histories told to a real ledger on a real database, then every view table compared as text.
 */
export const keepingSuite = (engine: string, houseFor: () => Promise<LedgerHouse>, runs: number): void => {
  describe(`views kept on ${engine}`, () => {
    it('come to the same bytes by upkeep, by rebuild and by catching up, whatever was entered', async () => {
      await fc.assert(
        fc.asyncProperty(anyHistory, fc.nat(60), async (history, pause) => {
          const house = await houseFor();
          try {
            const ledger = await house.open();
            const before = viewKeeper(ledger, VIEWS);
            await tell(ledger, history.slice(0, pause), 0, before);
            await before.close();
            // As a new process would: nothing at hand, everything from the tables.
            const keeper = viewKeeper(ledger, VIEWS);
            await tell(ledger, history.slice(pause), pause, keeper);
            const kept = await viewTables(keeper.reader);

            await keeper.rebuild(silent);
            expect(await viewTables(keeper.reader)).toBe(kept);
            await expectRunsAsCounted(viewReader(keeper.reader));
            await keeper.close();
          } finally {
            await house.clear();
          }
        }),
        { numRuns: runs },
      );
    }, 120_000);

    it('are caught up when they were not kept from the start, and kept from there on', async () => {
      const [history = []] = fc.sample(anyHistory, { numRuns: 1, seed: 42 });
      const house = await houseFor();
      try {
        const unkept = await house.open();
        await tell(unkept, history);
        await unkept.close();

        const ledger = await house.open();
        await tell(ledger, history, 1_000);
        const seen: number[] = [];
        await catchUp(ledger, VIEWS, (position) => seen.push(position));
        expect(seen.at(-1)).toBe(2 * history.length);

        const keeper = viewKeeper(ledger, VIEWS);
        await tell(ledger, history, 2_000, keeper);
        const kept = await viewTables(keeper.reader);
        await keeper.rebuild(silent);
        expect(await viewTables(keeper.reader)).toBe(kept);
        await keeper.close();
      } finally {
        await house.clear();
      }
    });

    it('miss nothing that is entered while they are being rebuilt', async () => {
      const history = fc.sample(anyHistory, { numRuns: 6, seed: 7 }).flat();
      // Another one: the same told twice would change no count.
      const meanwhile = fc.sample(anyHistory, { numRuns: 6, seed: 8 }).flat();
      const house = await houseFor();
      try {
        const ledger = await house.open();
        await tell(ledger, history);
        // Told, and committed, after the first page is read and before anything is written: in the very middle.
        let told = false;
        const interrupted = {
          ...ledger,
          after: async (position: number, limit: number) => {
            const page = await ledger.after(position, limit);
            if (!told) {
              told = true;
              await tell(ledger, meanwhile, 1_000);
            }
            return page;
          },
        };
        const keeper = viewKeeper(interrupted, VIEWS);
        await keeper.rebuild(silent);
        await tell(ledger, history, 2_000, keeper);
        const kept = await viewTables(keeper.reader);
        await keeper.rebuild(silent);
        expect(await viewTables(keeper.reader)).toBe(kept);
        await keeper.close();
      } finally {
        await house.clear();
      }
    });

    it('are built anew when a version is new or the building was cut short', async () => {
      const [history = []] = fc.sample(anyHistory, { numRuns: 1, seed: 11 });
      const house = await houseFor();
      try {
        const ledger = await house.open();
        await tell(ledger, history);
        await catchUp(ledger, VIEWS, silent);
        const kept = await viewTables(ledger.reader);

        for (const spoilt of ['{"version":0,"position":5}', '{"version":1,"position":-1}']) {
          await ledger.transaction((sql) =>
            sql.query('UPDATE view_detail SET detail = $1 WHERE key = $2', [spoilt, '']),
          );
          await catchUp(ledger, VIEWS, silent);
          expect(await viewTables(ledger.reader)).toBe(kept);
        }
      } finally {
        await house.clear();
      }
    });

    it('answer from everything that is on disk when a question comes, and are written when none does', async () => {
      const [history = []] = fc.sample(anyHistory, { numRuns: 1, seed: 3 });
      const house = await houseFor();
      try {
        const ledger = await house.open();
        const keeper = viewKeeper(ledger, VIEWS);
        await keeper.current();
        await tell(ledger, history);
        const asked = await viewTables(keeper.reader);
        expect(asked).toBe(await viewTables(ledger.reader));
        expect(asked).toContain(`\\"position\\":${history.length}`);

        await tell(ledger, history, 1_000);
        await until(async () =>
          (await viewTables(ledger.reader)).includes(`\\"position\\":${2 * history.length}`),
        );
        await keeper.close();
      } finally {
        await house.clear();
      }
    });

    it('say so when they cannot be written, and take what they missed from the log for the next question', async () => {
      const [history = []] = fc.sample(anyHistory, { numRuns: 1, seed: 5 });
      const house = await houseFor();
      try {
        const ledger = await house.open();
        let isFull = false;
        const failing: OpenLedger['transaction'] = (work) =>
          ledger.transaction(async (sql) => {
            const result = await work(sql);
            if (isFull) throw new Error('the disk is full');
            return result;
          });
        const keeper = viewKeeper({ ...ledger, transaction: failing }, VIEWS);
        await keeper.current();
        await tell(ledger, history, 0, keeper);

        isFull = true;
        await tell(ledger, history, 1_000);
        await expect(viewTables(keeper.reader)).rejects.toThrow('the disk is full');

        isFull = false;
        await tell(ledger, history, 2_000);
        const kept = await viewTables(keeper.reader);
        await keeper.rebuild(silent);
        expect(await viewTables(keeper.reader)).toBe(kept);
        await keeper.close();
      } finally {
        await house.clear();
      }
    });
  });
};

const until = async (holds: () => Promise<boolean>): Promise<void> => {
  while (!(await holds())) await new Promise((go) => setTimeout(go, 20));
};
