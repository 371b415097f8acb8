import { askedOf, bin, onBin, put, takeFrom } from '../support/bin';
import type { LedgerHouse } from '../support/ledger-house';

const takeWhileOther = (id: string, other: string) => onBin(id, { type: 'TakeWhileOther', count: 1 }, other);

export const factsSuite = (house: () => LedgerHouse): void => {
  it('decides on facts as those before it in the same batch have left them', async () => {
    const ledger = await house().open();
    await askedOf(ledger, 'key-1', put('a', 5), put('other', 1));

    const [before, emptied, after] = await Promise.all([
      askedOf(ledger, 'key-2', takeWhileOther('a', 'other')),
      askedOf(ledger, 'key-3', takeFrom('other')),
      askedOf(ledger, 'key-4', takeWhileOther('a', 'other')),
    ]);

    expect([before.ok, emptied.ok]).toStrictEqual([true, true]);
    expect(after).toStrictEqual({ ok: false, rejection: { code: 'other-empty' } });
  });

  it('reads facts from the log when it has just been opened', async () => {
    const before = await house().open();
    await askedOf(before, 'key-1', put('a', 5), put('other', 1));
    await before.close();
    const ledger = await house().open();

    const [taken, refused] = await Promise.all([
      askedOf(ledger, 'key-2', takeWhileOther('a', 'other')),
      askedOf(ledger, 'key-3', takeWhileOther('a', 'nobody-ever-wrote-to-this')),
    ]);

    expect(taken).toMatchObject({ ok: true, events: [{ version: 2 }] });
    expect(refused).toStrictEqual({ ok: false, rejection: { code: 'other-empty' } });
  });

  it('records one command over many streams that it has yet to read', async () => {
    const before = await house().open();
    const bins = Array.from({ length: 40 }, (_, n) => `b${n}`);
    await askedOf(before, 'key-1', ...bins.map((id) => put(id, 1)));
    await before.close();
    const ledger = await house().open();

    const emptied = await askedOf(ledger, 'key-2', ...bins.map((id) => takeFrom(id)));

    expect(emptied).toMatchObject({ ok: true });
    expect(await ledger.head()).toBe(80);
  });

  it('still knows streams that have long left its memory', async () => {
    const ledger = await house().open();
    const many = Array.from({ length: 4_500 }, (_, n) => n);
    await Promise.all(many.map((n) => askedOf(ledger, `key-${n}`, put(`b${n}`, n + 1))));

    const taken = await Promise.all(many.map((n) => askedOf(ledger, `take-${n}`, takeFrom(`b${n}`, n + 1))));

    expect(taken.every((outcome) => outcome.ok && outcome.events[0]?.version === 2)).toBe(true);
    expect(await ledger.state(bin, 'b4499')).toBe(0);
  });
};
