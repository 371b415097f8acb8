import fc from 'fast-check';
import type { Asking, Outcome } from '@libs/ledger';
import { bin, metaFor, positionsOf, put, takeFrom } from '../support/bin';
import type { LedgerHouse } from '../support/ledger-house';

/**
 * Goal: however askings fall into batches, and whenever the writer is opened anew, the answers are those of a plant
 * that does one thing after the other.
 * Method: random askings, several bins each, in random bursts with restarts between; the same run on plain numbers.
 */
type Move = { readonly bin: string; readonly count: number };
type Asked = { readonly key: number; readonly moves: readonly Move[] };
type Burst = { readonly asked: readonly Asked[]; readonly restart: boolean };

const move = fc.record({ bin: fc.constantFrom('a', 'b', 'c'), count: fc.integer({ min: -4, max: 4 }) });
const asked = fc.record({
  key: fc.integer({ min: 0, max: 40 }),
  moves: fc.array(move, { minLength: 1, maxLength: 3 }),
});
const burst = fc.record({
  asked: fc.array(asked, { maxLength: 12 }),
  restart: fc.boolean(),
}) satisfies fc.Arbitrary<Burst>;

const askingOf = ({ key, moves }: Asked): Asking => ({
  parts: moves.map(({ bin: id, count }) => (count < 0 ? takeFrom(id, -count) : put(id, count))),
  meta: metaFor(`key-${key}`),
  content: JSON.stringify(moves),
});

/** One thing after the other, on plain numbers. */
const plainPlant = () => {
  const bins = new Map<string, number>();
  const answered = new Map<number, string>();

  const apply = (moves: readonly Move[]): Map<string, number> | undefined => {
    const after = new Map(bins);
    for (const { bin: id, count } of moves) {
      const left = (after.get(id) ?? 0) + count;
      if (left < 0) return undefined;
      after.set(id, left);
    }
    return after;
  };

  const answer = ({ key, moves }: Asked): string => {
    const content = JSON.stringify(moves);
    const before = answered.get(key);
    if (before !== undefined) return before === content ? 'repeated' : 'KeyReused';

    const after = apply(moves);
    if (after === undefined) return 'too-few';
    answered.set(key, content);
    for (const [id, count] of after) bins.set(id, count);
    return 'recorded';
  };
  return { answer, count: (id: string) => bins.get(id) ?? 0 };
};

const wordFor = (outcome: Outcome): string => {
  if (!outcome.ok) return outcome.rejection.code;
  return outcome.repeated ? 'repeated' : 'recorded';
};

const nameOf = (fault: unknown): string => (fault instanceof Error ? fault.name : 'no error at all');

export const modelSuite = (newHouse: () => Promise<LedgerHouse>, runs: number): void => {
  it('answers as if it did one thing after the other, however they come', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(burst, { maxLength: 6 }), async (bursts) => {
        const house = await newHouse();
        try {
          await holds(house, bursts);
        } finally {
          await house.clear();
        }
      }),
      { numRuns: runs },
    );
  });
};

const holds = async (house: LedgerHouse, bursts: readonly Burst[]): Promise<void> => {
  const plain = plainPlant();
  let ledger = await house.open();
  for (const { asked: all, restart } of bursts) {
    const words = await Promise.all(
      all.map(({ key, moves }) => ledger.ask(askingOf({ key, moves })).then(wordFor).catch(nameOf)),
    );
    expect(words).toStrictEqual(all.map(plain.answer));
    if (!restart) continue;
    await ledger.close();
    ledger = await house.open();
  }
  for (const id of ['a', 'b', 'c']) expect(await ledger.state(bin, id)).toBe(plain.count(id));
  const positions = positionsOf(await ledger.after(0, 1_000));
  expect(positions).toStrictEqual(positions.map((_, n) => n + 1));
};
