import type { OpenLedger } from '@libs/ledger/typeorm';
import { VIEWS } from '@libs/views';
import { catchUp, rebuild, viewKeeper } from '@libs/views/typeorm';
import fc from 'fast-check';
import { anyHistory } from '../support/any-history';
import type { AnyEntry } from '../support/any-history';
import type { LedgerHouse } from '../support/ledger-house';
import { toldOf } from '../support/told-units';
import { viewTables } from '../support/view-tables';

const silent = (): void => undefined;

/** Told a few at a time, so that entries of one section share a commit. */
const tell = async (ledger: OpenLedger, history: readonly AnyEntry[], from = 0): Promise<void> => {
  for (let next = 0; next < history.length; next += 7) {
    await Promise.all(
      history
        .slice(next, next + 7)
        .map(({ serial, occurredAt, event }, index) =>
          ledger.ask(toldOf(`key-${from + next + index}`, { kind: 'section', serial }, occurredAt, [event])),
        ),
    );
  }
};

/**
 * Goal: whatever is entered, in whatever order, upkeep inside the writer and a rebuild from the log come to the same
 * bytes. Method: random histories told to a real ledger on a real database, then every view table compared as text.
 */
export const keepingSuite = (engine: string, houseFor: () => Promise<LedgerHouse>, runs: number): void => {
  describe(`views kept on ${engine}`, () => {
    it('come to the same bytes by upkeep, by rebuild and by catching up, whatever was entered', async () => {
      await fc.assert(
        fc.asyncProperty(anyHistory, fc.nat(60), async (history, pause) => {
          const house = await houseFor();
          try {
            const keeper = viewKeeper(VIEWS);
            const ledger = await house.open({ keepers: [keeper] });
            await tell(ledger, history.slice(0, pause));
            // As a new process would: nothing at hand, everything from the tables.
            keeper.dropped();
            await tell(ledger, history.slice(pause), pause);
            const kept = await viewTables(ledger.reader);

            await rebuild(ledger, { views: VIEWS, keeper }, silent);
            expect(await viewTables(ledger.reader)).toBe(kept);
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

        const keeper = viewKeeper(VIEWS);
        const ledger = await house.open({ keepers: [keeper] });
        await tell(ledger, history, 1_000);
        const seen: number[] = [];
        await catchUp(ledger, { views: VIEWS, keeper }, (position) => seen.push(position));
        expect(seen.at(-1)).toBe(2 * history.length);

        await tell(ledger, history, 2_000);
        const kept = await viewTables(ledger.reader);
        await rebuild(ledger, { views: VIEWS, keeper }, silent);
        expect(await viewTables(ledger.reader)).toBe(kept);
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
        const keeper = viewKeeper(VIEWS);
        const ledger = await house.open({ keepers: [keeper] });
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
        await rebuild(interrupted, { views: VIEWS, keeper }, silent);
        await tell(ledger, history, 2_000);
        const kept = await viewTables(ledger.reader);
        await rebuild(ledger, { views: VIEWS, keeper }, silent);
        expect(await viewTables(ledger.reader)).toBe(kept);
      } finally {
        await house.clear();
      }
    });

    it('are built anew when a version is new or the building was cut short', async () => {
      const [history = []] = fc.sample(anyHistory, { numRuns: 1, seed: 11 });
      const house = await houseFor();
      try {
        const keeper = viewKeeper(VIEWS);
        const ledger = await house.open({ keepers: [keeper] });
        await tell(ledger, history);
        const kept = await viewTables(ledger.reader);

        for (const spoilt of ['{"version":0,"position":5}', '{"version":1,"position":-1}']) {
          await ledger.transaction((sql) =>
            sql.query('UPDATE view_detail SET detail = $1 WHERE key = $2', [spoilt, '']),
          );
          keeper.dropped();
          await catchUp(ledger, { views: VIEWS, keeper }, silent);
          expect(await viewTables(ledger.reader)).toBe(kept);
        }
      } finally {
        await house.clear();
      }
    });
  });
};
