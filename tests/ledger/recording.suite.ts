import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import { NotRecordable } from '@libs/ledger';
import { askedOf, bin, eventsOf, metaFor, onBin, positionsOf, put, takeFrom } from '../support/bin';
import { steadyClock } from '../support/ledger-house';
import type { LedgerHouse } from '../support/ledger-house';

export const recordingSuite = (house: () => LedgerHouse): void => {
  it('records what 64 callers tell it at once, at positions and versions without gaps', async () => {
    const ledger = await house().open();
    const told = Array.from({ length: 640 }, (_, n) => n);

    const outcomes = await Promise.all(told.map((n) => askedOf(ledger, `key-${n}`, put(`b${n % 7}`))));

    const events = await ledger.after(0, 1_000);
    expect(outcomes.every((outcome) => outcome.ok && !outcome.repeated)).toBe(true);
    expect(positionsOf(events)).toStrictEqual(told.map((n) => n + 1));
    const versions = (await ledger.ofStreams(['bin/b3'])).map(({ version }) => version);
    expect(versions).toStrictEqual(versions.map((_, n) => n + 1));
    expect(await ledger.state(bin, 'b3')).toBe(versions.length);
  });

  it('gives each event the envelope its sender, its place and the clock make up', async () => {
    const ledger = await house().open({
      id: 'ledger-1',
      clock: steadyClock(Date.parse('2026-03-02T13:30:00.000Z')),
    });

    const [event] = eventsOf(await askedOf(ledger, 'key-1', put('a', 3)));

    expect(event).toStrictEqual({
      ...metaFor('key-1'),
      schema: 'PartsPut/1',
      ledger: 'ledger-1',
      position: 1,
      stream: 'bin/a',
      version: 1,
      recordedAt: '2026-03-02T13:30:00.001Z',
      keyIndex: 0,
      revision: null,
      planDigest: null,
      data: { count: 3, note: undefined },
    });
  });

  it('stores the RFC 8785 text of the event, and SHA-256 over 0x00 and that text as its leaf', async () => {
    const ledger = await house().open();
    const [event] = eventsOf(await askedOf(ledger, 'key-1', put('a', 1, 'größer ≥ "7" \u000f')));

    const [row] = await ledger.reader.query<{ body: string; leaf: Buffer }>('SELECT body, leaf FROM event');

    expect(row?.body).toBe(canonicalize(event));
    const leaf = createHash('sha256')
      .update(Buffer.from([0]))
      .update(Buffer.from(String(row?.body)))
      .digest();
    expect(row?.leaf.equals(leaf)).toBe(true);
  });

  it('records several streams of one command at neighbouring positions, or none of them', async () => {
    const ledger = await house().open();
    await askedOf(ledger, 'key-1', put('a', 5));

    const moved = eventsOf(await askedOf(ledger, 'key-2', takeFrom('a', 2), put('b', 2)));
    const refused = await askedOf(ledger, 'key-3', put('b', 1), takeFrom('a', 4));

    expect(
      moved.map(({ stream, position, version, keyIndex }) => [stream, position, version, keyIndex]),
    ).toStrictEqual([
      ['bin/a', 2, 2, 0],
      ['bin/b', 3, 1, 1],
    ]);
    expect(refused).toStrictEqual({ ok: false, rejection: { code: 'too-few', left: 3 } });
    expect(await ledger.head()).toBe(3);
  });

  it('lets a later part of a command see what an earlier one did', async () => {
    const ledger = await house().open();

    const outcome = await askedOf(ledger, 'key-1', put('a', 2), takeFrom('a', 2), takeFrom('a', 1));

    expect(outcome).toStrictEqual({ ok: false, rejection: { code: 'too-few', left: 0 } });
  });

  it('answers a command that changes nothing, and records nothing', async () => {
    const ledger = await house().open();

    const outcome = await askedOf(ledger, 'key-1', onBin('a', { type: 'Look' }));

    expect(outcome).toStrictEqual({ ok: true, events: [], repeated: false });
    expect(await ledger.head()).toBe(0);
  });

  it('never records a time before the one it recorded last, though the clock is set back', async () => {
    const times = [3_000, 1_000, 2_000, 4_000];
    const ledger = await house().open({ clock: () => times.shift() ?? 0 });

    for (const key of ['a', 'b', 'c', 'd', 'e']) await askedOf(ledger, key, put('a'));

    const recorded = (await ledger.after(0, 10)).map(({ recordedAt }) => Date.parse(recordedAt));
    expect(recorded).toStrictEqual([3_000, 3_000, 3_000, 4_000, 4_000]);
  });

  it.each([
    ['a count that is no number', put('a', Number.NaN)],
    ['half of a surrogate pair', put('a', 1, 'half \ud83d')],
  ])('refuses %s, which JSON cannot hold, and records nothing of its command', async (_what, part) => {
    const ledger = await house().open();

    await expect(askedOf(ledger, 'key-1', put('b'), part)).rejects.toThrow(NotRecordable);

    expect(await ledger.head()).toBe(0);
    expect(await ledger.state(bin, 'b')).toBe(0);
  });
};
