import { ROUTES } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import { eventId, leafHex } from '@libs/plant';
import { DRY, HOME, WET, openSmallPlant, orderDouble } from '../../support/small-plant';
import type { SmallPlant } from '../../support/small-plant';

describe('the history of a home', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    await small.tell('start', { serial: WET, at: 'chassis' });
  });
  afterEach(() => small.clear());

  const history = async (serial: string): Promise<AnswerOf<'history'>> =>
    ROUTES.history.answer.parse(await small.plant.asks.history(serial));

  it('is the same by the home’s serial and by any of its sections’', async () => {
    const byHome = await history(HOME);
    expect(await history(WET)).toStrictEqual(byHome);
    expect(await history(DRY)).toStrictEqual(byHome);
    expect(new Set(byHome.entries.map(({ serial }) => serial))).toStrictEqual(new Set([HOME, WET, DRY]));
  });

  it('is not known under a serial nobody ordered', async () => {
    expect(await small.plant.asks.history('T-999')).toBeUndefined();
  });

  it('puts what was entered late where it happened, and says so', async () => {
    small.clock.now = Date.parse('2026-03-02T15:00:00.000Z');
    await small.tell('move', { serial: WET, to: 'floor', occurredAt: '2026-03-02T09:00:00.000-06:00' });
    small.clock.now = Date.parse('2026-03-02T20:00:00.000Z');
    await small.tell('work', {
      serial: WET,
      operation: 'frame-staged',
      occurredAt: '2026-03-02T08:30:00.000-06:00',
    });
    const { entries } = await history(HOME);
    const types = entries.map(({ type }) => type);
    expect(types.indexOf('WorkRecorded')).toBeLessThan(types.indexOf('SectionMoved'));
    expect(entries.find(({ type }) => type === 'WorkRecorded')).toMatchObject({ late: true });
    const instants = entries.map(({ occurredAt }) => Date.parse(occurredAt));
    expect(instants).toStrictEqual([...instants].sort((a, b) => a - b));
  });

  it('links an entry with what mends it, both ways', async () => {
    await small.tell('work', { serial: WET, operation: 'frame-staged' });
    await small.tell('wrongSerial', { recordedOn: WET, belongsTo: DRY, operation: 'frame-staged' });
    const { entries } = await history(HOME);
    const withdrawn = entries.find(({ type }) => type === 'WorkWithdrawn');
    const mistaken = entries.find(({ position }) => position === withdrawn?.corrects);
    expect(mistaken).toMatchObject({ type: 'WorkRecorded', serial: WET });
    expect(mistaken?.correctedBy).toContain(withdrawn?.position);
  });

  it('shows notes and names in clear to those who read it, and never what they were sealed as', async () => {
    await small.tell('hold', { serial: WET, reason: 'damaged', note: 'Asked the engineer.' }, 'manager');
    const answer = await history(HOME);
    expect(answer.entries.at(-1)).toMatchObject({ note: 'Asked the engineer.', by: 'Mara' });
    expect(JSON.stringify(answer)).not.toContain('sealed:');
  });

  it('gives each entry the leaf and the id that anyone can work out from the ledger', async () => {
    const { entries } = await history(HOME);
    const { ledger } = await small.plant.asks.plant();
    for (const { id, position, leaf } of entries) {
      expect(id).toBe(eventId(ledger, position));
      expect(leaf).toMatch(/^[0-9a-f]{64}$/);
    }
    expect(new Set(entries.map(({ leaf }) => leaf)).size).toBe(entries.length);
  });
});

describe('the id of an event (UUIDv5, RFC 9562 section 5.5)', () => {
  it('is worked out as the RFC’s own example is: www.example.com in the DNS namespace (appendix A.4)', () => {
    // The same function with a name that is no position: the arithmetic is what the RFC's example checks.
    const id = eventId('6ba7b810-9dad-11d1-80b4-00c04fd430c8', 'www.example.com' as unknown as number);
    expect(id).toBe('2ed6657d-e927-568b-95e1-2665a8aea6a2');
  });
});

describe('the leaf of an event (RFC 9162 section 2.1.1)', () => {
  it('is SHA-256 over 0x00 and the RFC 8785 bytes, whatever the order of its members', () => {
    const event = { b: 1, a: 2 } as unknown as Parameters<typeof leafHex>[0];
    const same = { a: 2, b: 1 } as unknown as Parameters<typeof leafHex>[0];
    // printf '\0{"a":2,"b":1}' | sha256sum (GNU coreutils)
    expect(leafHex(event)).toBe(leafHex(same));
    expect(leafHex(event)).toBe(SHA256_OF_ZERO_AND_TEXT);
  });
});
const SHA256_OF_ZERO_AND_TEXT = '37711b2996026bb3a96a72aeff278e6656e76518402a7ece85dbab7b2b80f816';
