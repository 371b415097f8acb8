import { KeyReused } from '@libs/ledger';
import { askedOf, bin, eventsOf, put, takeFrom } from '../support/bin';
import type { LedgerHouse } from '../support/ledger-house';

export const keysSuite = (house: () => LedgerHouse): void => {
  it('gives the first answer again when the same key comes with the same content', async () => {
    const ledger = await house().open();
    const first = await askedOf(ledger, 'key-1', put('a', 2), put('b', 1));
    await askedOf(ledger, 'key-2', put('a', 2));

    const again = await askedOf(ledger, 'key-1', put('a', 2), put('b', 1));

    expect(eventsOf(again)).toStrictEqual(stored(eventsOf(first)));
    expect(again).toMatchObject({ ok: true, repeated: true });
    expect(await ledger.head()).toBe(3);
  });

  it('gives it again to the next writer too', async () => {
    const before = await house().open();
    const first = await askedOf(before, 'key-1', put('a', 2), put('b', 1));
    await before.close();

    const again = await askedOf(await house().open(), 'key-1', put('a', 2), put('b', 1));

    expect(again).toStrictEqual({ ok: true, events: stored(eventsOf(first)), repeated: true });
  });

  it('refuses the same key with other content, and says what to do', async () => {
    const ledger = await house().open();
    await askedOf(ledger, 'key-1', put('a', 2));

    const reused = await askedOf(ledger, 'key-1', put('a', 3)).catch((fault: unknown) => fault);

    expect(reused).toBeInstanceOf(KeyReused);
    expect(reused).toMatchObject({ key: 'key-1', remedy: 'use-a-new-key' });
    expect(await ledger.state(bin, 'a')).toBe(2);
  });

  it('records one key once, however often it comes within one batch', async () => {
    const ledger = await house().open();

    const outcomes = await Promise.all([
      ...[1, 2, 3].map(() => askedOf(ledger, 'key-1', put('a', 2))),
      askedOf(ledger, 'key-1', put('a', 9)).catch((fault: unknown) => fault),
      askedOf(ledger, 'key-2', put('a', 1)),
    ]);

    const repeated = outcomes.map((outcome) => (outcome instanceof Error ? outcome.name : outcome));
    expect(repeated).toMatchObject([
      { repeated: false },
      { repeated: true },
      { repeated: true },
      'KeyReused',
      { repeated: false },
    ]);
    expect(await ledger.state(bin, 'a')).toBe(3);
  });

  it('remembers no rejection: the same command is decided anew', async () => {
    const ledger = await house().open();
    const refused = await askedOf(ledger, 'key-1', takeFrom('a'));
    await askedOf(ledger, 'key-2', put('a'));

    const now = await askedOf(ledger, 'key-1', takeFrom('a'));

    expect(refused.ok).toBe(false);
    expect(now).toMatchObject({ ok: true, repeated: false });
  });

  it('decides a key anew within a batch when it was rejected before in the same batch', async () => {
    const ledger = await house().open();

    const outcomes = await Promise.all([
      askedOf(ledger, 'key-1', takeFrom('a')),
      askedOf(ledger, 'key-2', put('a')),
      askedOf(ledger, 'key-1', takeFrom('a')),
    ]);

    expect(outcomes).toMatchObject([{ ok: false }, { ok: true }, { ok: true, repeated: false }]);
  });
};

/** As it comes back from the log: members that are undefined are not stored. */
const stored = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;
