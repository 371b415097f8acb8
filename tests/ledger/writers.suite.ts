import { LedgerClosed, WriterSuperseded } from '@libs/ledger';
import { askedOf, bin, eventsOf, positionsOf, put, takeFrom } from '../support/bin';
import type { LedgerHouse } from '../support/ledger-house';

export const writersSuite = (house: () => LedgerHouse): void => {
  it('goes on after a restart where it had stopped', async () => {
    const before = await house().open();
    await askedOf(before, 'key-1', put('a', 3), put('b', 1));
    await before.close();

    const ledger = await house().open({ clock: () => 0 });
    const [event] = eventsOf(await askedOf(ledger, 'key-2', takeFrom('a', 2)));

    const [first] = await ledger.after(0, 1);
    expect(ledger.id).toBe(before.id);
    expect(event).toMatchObject({
      position: 3,
      version: 2,
      ledger: before.id,
      recordedAt: first?.recordedAt,
    });
    expect(await ledger.state(bin, 'a')).toBe(1);
  });

  it('steps down when another writer has taken over, having recorded nothing, and says where to go', async () => {
    const first = await house().open();
    await askedOf(first, 'key-1', put('a', 1));
    await house().endLease();
    const second = await house().open();
    await askedOf(second, 'key-2', takeFrom('a', 1));

    const late = await askedOf(first, 'key-3', takeFrom('a', 1)).catch((fault: unknown) => fault);
    const later = await askedOf(first, 'key-4', put('a', 1)).catch((fault: unknown) => fault);
    const sentOn = await askedOf(second, 'key-3', takeFrom('a', 1));

    expect(late).toBeInstanceOf(WriterSuperseded);
    expect(later).toBeInstanceOf(WriterSuperseded);
    expect(late).toMatchObject({ remedy: 'send-to-the-other-writer' });
    expect(sentOn).toStrictEqual({ ok: false, rejection: { code: 'too-few', left: 0 } });
    expect(positionsOf(await second.after(0, 10))).toStrictEqual([1, 2]);
  });

  it('knows before anything is told that another has taken over', async () => {
    const first = await house().open();
    const before = await first.writes();
    await house().endLease();
    const second = await house().open();

    expect([before, await first.writes(), await second.writes()]).toStrictEqual([true, false, true]);
  });

  it('lets no superseded writer touch the views', async () => {
    const first = await house().open();
    await house().endLease();
    await house().open();

    const touched = first.transaction((sql) => sql.query('CREATE TABLE counted (position BIGINT)'));

    await expect(touched).rejects.toThrow(WriterSuperseded);
  });

  it('records what already waits when it is closed, and takes nothing more', async () => {
    const ledger = await house().open();
    const waiting = ['a', 'b', 'c'].map((key) => askedOf(ledger, key, put('a')));

    await ledger.close();

    expect((await Promise.all(waiting)).map((outcome) => outcome.ok)).toStrictEqual([true, true, true]);
    await expect(askedOf(ledger, 'd', put('a'))).rejects.toThrow(LedgerClosed);
    expect(await (await house().open()).head()).toBe(3);
  });
};
