import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { signatureOf } from '@libs/plant';
import type { Subscribed } from '@libs/plant';
import { answers, openReceiver, takes } from '../../support/receiver';
import type { Receiver } from '../../support/receiver';
import { openFeedHouse, wishFor } from '../../support/feed-house';
import type { FeedHouse } from '../../support/feed-house';

const HOUR = 60 * 60 * 1_000;

/** Goal: what is told reaches every subscriber at least once and in its order, whatever breaks in between. */
describe('the outgoing feed', () => {
  let house: FeedHouse;
  let receiver: Receiver;
  beforeEach(async () => {
    house = await openFeedHouse();
    receiver = await openReceiver();
  });
  afterEach(async () => {
    await receiver.close();
    await house.clear();
  });

  const subscribe = async (
    more: Parameters<typeof wishFor>[1] = {},
  ): Promise<Subscribed & { readonly ok: true }> => {
    const made = await house.feed().subscribe(wishFor(receiver.url, more), 'administrator');
    if (!made.ok) throw new Error(made.why);
    return made;
  };
  const sequences = (from: readonly Receiver['received'][number][]): readonly number[] =>
    from.map(({ event }) => Number(event['sequence']));
  /** Positions in the ledger after one, as it stands. */
  const told = async (after: number): Promise<readonly number[]> =>
    (await house.small.plant.tail.after(after, 500)).map(({ position }) => position);

  it('sends each event that is told from then on, once and in order, signed over what is sent', async () => {
    const { secret } = await subscribe();
    const before = await house.small.plant.head();
    await house.tellSome('T-700');
    await house.later(0);

    expect(sequences(receiver.received)).toStrictEqual(await told(before));
    for (const { headers, body } of receiver.received) {
      const id = String(headers['webhook-id']);
      const timestamp = Number(headers['webhook-timestamp']);
      expect(headers['content-type']).toBe('application/cloudevents+json; charset=utf-8');
      expect(headers['webhook-signature']).toBe(signatureOf({ id, timestamp, body }, String(secret)));
      expect(JSON.parse(body).id).toBe(id);
    }
  });

  it('sends the whole history to whoever asks for it from the start', async () => {
    await subscribe({ fromStart: true });
    await house.later(0);
    const left = (await house.small.plant.tail.after(0, 500)).filter(
      ({ stream }) => !stream.startsWith('person/'),
    );
    expect(sequences(receiver.received)).toStrictEqual(left.map(({ position }) => position));
  });

  it('sends only what was asked for', async () => {
    await subscribe({
      wants: { events: ['SectionOrdered'], alarms: false, checkpoints: false, clocks: false },
    });
    await house.tellSome('T-701');
    await house.later(0);
    expect(receiver.received.map(({ event }) => [event['type'], event['subject']])).toStrictEqual([
      ['studbook.record.SectionOrdered.v1', 'T-701-A'],
      ['studbook.record.SectionOrdered.v1', 'T-701-B'],
    ]);
  });

  it('waits with everything while the receiver is down, and then misses nothing', async () => {
    await subscribe();
    const before = await house.small.plant.head();
    receiver.answer(answers(503));
    await house.tellSome('T-702');
    for (const pause of [0, 5_000, 15_000, 45_000]) await house.later(pause);
    expect(new Set(sequences(receiver.received)).size).toBe(1);
    expect(receiver.received).toHaveLength(4);

    receiver.answer(takes);
    await house.tellSome('T-703');
    await house.later(HOUR);
    expect([...new Set(sequences(receiver.received))]).toStrictEqual(await told(before));
  });

  it('pauses longer after every failure, and does not try before', async () => {
    await subscribe();
    receiver.answer(answers(500));
    await house.tellSome('T-704');
    const tries: number[] = [];
    for (const pause of [0, 4_999, 1, 14_999, 1, 44_999, 1]) {
      await house.later(pause);
      tries.push(receiver.received.length);
    }
    expect(tries).toStrictEqual([1, 1, 2, 2, 3, 3, 4]);
  });

  it('waits as long as the receiver asks for', async () => {
    await subscribe();
    receiver.answer(answers(429, { 'retry-after': '600' }));
    await house.tellSome('T-705');
    await house.later(0);
    await house.later(599_000);
    expect(receiver.received).toHaveLength(1);
    await house.later(1_000);
    expect(receiver.received).toHaveLength(2);
  });

  it('delivers again, under the same id, what was taken just before a crash', async () => {
    await subscribe();
    const before = await house.small.plant.head();
    await house.tellSome('T-706');
    receiver.answer((_received, answer) => {
      if (receiver.received.length < 3) {
        takes(_received, answer);
        return;
      }
      // The process dies when the receiver has it and nobody has kept that it does.
      void house.crash();
      receiver.answer(takes);
      takes(_received, answer);
    });
    await house.later(0);
    await house.reopen();
    await house.later(0);

    const ids = receiver.received.map(({ headers }) => headers['webhook-id']);
    expect(ids[3]).toBe(ids[2]);
    expect([...new Set(sequences(receiver.received))]).toStrictEqual(await told(before));
  });

  it('holds up nobody by a receiver that is down', async () => {
    const other = await openReceiver();
    receiver.answer(answers(503));
    await subscribe();
    await house.feed().subscribe(wishFor(other.url), 'administrator');
    const before = await house.small.plant.head();
    await house.tellSome('T-707');
    await house.later(0);
    expect(sequences(other.received)).toStrictEqual(await told(before));
    await other.close();
  });

  it('gives up what the receiver refuses, goes on with the next, and sends it again when told to', async () => {
    await subscribe({
      wants: { events: ['SectionOrdered'], alarms: false, checkpoints: false, clocks: false },
    });
    receiver.answer(({ event }, answer) =>
      answers(event['subject'] === 'T-708-A' ? 422 : 204)({} as never, answer),
    );
    await house.tellSome('T-708');
    for (let tries = 0; tries < 6; tries += 1) await house.later(HOUR);

    const [letter, ...more] = await house.feed().letters();
    expect(more).toStrictEqual([]);
    expect(letter).toMatchObject({ subject: 'T-708-A', why: 'http-422', tries: 5 });
    expect(receiver.received.at(-1)?.event['subject']).toBe('T-708-B');

    receiver.answer(takes);
    expect(await house.feed().sendAgain(letter?.id ?? '')).toStrictEqual({ ok: true });
    expect(receiver.received.at(-1)?.headers['webhook-id']).toBe(letter?.message);
    expect(await house.feed().letters()).toStrictEqual([]);
  });

  it('stops at a receiver that is gone, keeps its place, and goes on when somebody tries again', async () => {
    const { id } = await subscribe();
    const before = await house.small.plant.head();
    receiver.answer(answers(410));
    await house.tellSome('T-709');
    await house.later(0);
    await house.later(24 * HOUR);
    expect(receiver.received).toHaveLength(1);
    expect((await house.feed().subscriptions())[0]?.state).toBe('gone');

    receiver.answer(takes);
    await house.feed().tryNow(id);
    await house.later(0);
    expect(sequences(receiver.received.slice(1))).toStrictEqual(await told(before));
  });

  it('sends a checkpoint once, however often it is made', async () => {
    await subscribe({ wants: { events: [], alarms: false, checkpoints: true, clocks: false } });
    const { size, note, sha256 } = await house.small.plant.proof.checkpoint();
    await house.feed().noteCheckpoint({ size, note, sha256 });
    await house.feed().noteCheckpoint({ size, note, sha256 });
    await house.later(0);
    expect(receiver.received.map(({ event }) => event['data'])).toMatchObject([{ size, note, sha256 }]);
  });

  it('ends at once for whoever is ended', async () => {
    const { id } = await subscribe();
    await house.feed().end(id);
    await house.tellSome('T-710');
    await house.later(0);
    expect(receiver.received).toStrictEqual([]);
  });

  it('keeps the secret out of the database', async () => {
    const { secret } = await subscribe();
    await house.feed().close();
    const kept = ['feed.db', 'feed.db-wal'].flatMap((name) => {
      try {
        return [readFileSync(join(house.folder, name), 'latin1')];
      } catch {
        return [];
      }
    });
    expect(kept.join('')).toContain(receiver.url);
    expect(kept.join('')).not.toContain(String(secret).slice('whsec_'.length));
    await house.reopen();
  });
});
