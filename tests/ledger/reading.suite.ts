import { askedOf, bin, positionsOf, put } from '../support/bin';
import type { LedgerHouse } from '../support/ledger-house';

export const readingSuite = (house: () => LedgerHouse): void => {
  it('tells after each commit up to where there is something, to be read from there', async () => {
    const ledger = await house().open();
    const heard: number[] = [];
    ledger.news.subscribe((position) => heard.push(position));

    await askedOf(ledger, 'key-1', put('a'), put('b'));
    await askedOf(ledger, 'key-2', put('a'));

    expect(heard).toStrictEqual([2, 3]);
    expect(positionsOf(await ledger.after(2, 10))).toStrictEqual([3]);
  });

  it('reads on from a position, a page at a time', async () => {
    const ledger = await house().open();
    await Promise.all(['a', 'b', 'c', 'd', 'e'].map((key) => askedOf(ledger, key, put('a'))));

    expect(positionsOf(await ledger.after(0, 2))).toStrictEqual([1, 2]);
    expect(positionsOf(await ledger.after(2, 2))).toStrictEqual([3, 4]);
    expect(positionsOf(await ledger.after(4, 2))).toStrictEqual([5]);
    expect(await ledger.after(5, 2)).toStrictEqual([]);
  });

  it('reads a stream longer than a page whole, by position, and no other', async () => {
    const ledger = await house().open();
    const ids = Array.from({ length: 600 }, (_, n) => n);
    const twenty = Array.from({ length: 20 }, () => put('long'));
    await Promise.all(ids.map((n) => askedOf(ledger, `key-${n}`, put(`b${n % 50}`), ...twenty)));

    const events = await ledger.ofStreams(['bin/long', 'bin/b7', 'bin/unknown']);

    expect(new Set(events.map(({ stream }) => stream))).toStrictEqual(new Set(['bin/long', 'bin/b7']));
    expect(events).toHaveLength(12_000 + 12);
    expect(positionsOf(events)).toStrictEqual([...positionsOf(events)].sort((a, b) => a - b));
    await ledger.close();
    const reopened = await house().open();
    expect(await reopened.state(bin, 'long')).toBe(12_000);
    expect(await askedOf(reopened, 'key-x', put('long'))).toMatchObject({ events: [{ version: 12_001 }] });
  });

  it('answers many questions while it writes', async () => {
    const ledger = await house().open();
    const keys = Array.from({ length: 100 }, (_, n) => `key-${n}`);

    const [, ...heads] = await Promise.all([
      Promise.all(keys.map((key) => askedOf(ledger, key, put('a')))),
      ...keys.map(() => ledger.head()),
    ]);

    expect(heads.every((head) => head >= 0 && head <= 100)).toBe(true);
    expect(await ledger.head()).toBe(100);
  });

  it('lets no question write', async () => {
    const ledger = await house().open();

    await expect(ledger.reader.query('CREATE TABLE mine (a INTEGER)')).rejects.toThrow(/read.?only/i);
  });
};
