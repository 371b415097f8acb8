import { get } from 'node:http';
import type { IncomingMessage } from 'node:http';
import { readStream } from '../support/server-sent-events';
import type { ServerSentEvent } from '../support/server-sent-events';
import type { TestServer } from '../support/server';
import { openTestServer } from '../support/server';

type Listener = {
  readonly status: number;
  readonly media: string;
  /** Everything heard so far, once `enough` says it is enough. */
  readonly heard: (
    enough: (events: readonly ServerSentEvent[]) => boolean,
  ) => Promise<readonly ServerSentEvent[]>;
  readonly text: () => string;
  readonly hangUp: () => void;
  readonly ended: Promise<void>;
};

/** HTML Living Standard, section 9.2: `id` is where to go on, Last-Event-ID says it on coming back. */
describe('the live stream', () => {
  let server: TestServer;
  let lots = 0;
  beforeEach(async () => {
    server = await openTestServer();
  });
  afterEach(() => server.clear());

  const receiveLot = async (): Promise<number> => {
    lots += 1;
    return (await server.post('/api/lots', { lot: `L-${String(lots)}`, kind: 'batt' }).expect(201)).body
      .position;
  };
  const listen = async (query = '', headers: { readonly [name: string]: string } = {}): Promise<Listener> => {
    const sent = { authorization: `Bearer ${server.token}`, ...headers };
    const answer = await new Promise<IncomingMessage>((resolve, reject) => {
      get(`${server.address}/api/stream${query}`, { headers: sent }, resolve).on('error', reject);
    });
    let text = '';
    let changed = (): void => undefined;
    answer.setEncoding('utf8');
    answer.on('data', (chunk: string) => {
      text += chunk;
      changed();
    });
    answer.on('error', () => undefined);
    return {
      status: answer.statusCode ?? 0,
      media: answer.headers['content-type'] ?? '',
      heard: (enough) =>
        new Promise((resolve) => {
          changed = () => {
            const { events } = readStream(text);
            if (enough(events)) resolve(events);
          };
          changed();
        }),
      text: () => text,
      hangUp: () => answer.destroy(),
      ended: new Promise((resolve) => answer.once('close', resolve)),
    };
  };
  const upTo = (position: number) => (events: readonly ServerSentEvent[]) =>
    events.at(-1)?.id === String(position);
  const positions = (from: number, to: number): readonly string[] =>
    Array.from({ length: to - from + 1 }, (_, n) => String(from + n));

  it('tells each event once, with its position as id and what happened in words', async () => {
    const listener = await listen();
    expect(listener).toMatchObject({ status: 200, media: 'text/event-stream; charset=utf-8' });

    const position = await receiveLot();
    const events = await listener.heard(upTo(position));
    expect(events).toHaveLength(1);
    expect(events[0]).toMatchObject({ event: 'ledger', id: String(position) });
    expect(JSON.parse(events[0]?.data ?? '')).toMatchObject({
      position,
      type: 'LotReceived',
      stream: `lot/L-${String(lots)}`,
      says: { en: expect.stringMatching(/\w/), es: expect.stringMatching(/\w/) },
    });
    listener.hangUp();
  });

  it('begins after the position asked for, from the first event if need be', async () => {
    const head = await receiveLot();
    const listener = await listen('?after=0');

    const events = await listener.heard(upTo(head));
    expect(events.map(({ id }) => id)).toStrictEqual(positions(1, head));
    listener.hangUp();
  });

  it('catches a listener up from its Last-Event-ID without gap or repeat, while the plant goes on', async () => {
    const first = await listen('?after=0');
    const before = await first.heard((events) => events.length > 2);
    first.hangUp();
    await first.ended;
    const last = before.at(-1)?.id ?? '';

    await receiveLot();
    const [again] = await Promise.all([
      listen('?after=0', { 'last-event-id': last }),
      receiveLot(),
      receiveLot(),
    ]);
    const head = await receiveLot();
    const after = await again.heard(upTo(head));
    expect([...before, ...after].map(({ id }) => id)).toStrictEqual(positions(1, head));
    again.hangUp();
  });

  it('goes on where it was after the server was started anew', async () => {
    const position = await receiveLot();
    const listener = await listen('?after=0');
    await listener.heard(upTo(position));
    await server.stop();
    await listener.ended;
    await server.again();

    const next = await receiveLot();
    const again = await listen('?after=0', { 'last-event-id': String(position) });
    expect((await again.heard(upTo(next))).map(({ id }) => id)).toStrictEqual(positions(position + 1, next));
    again.hangUp();
  });

  it('refuses an id that it never gave', async () => {
    const listener = await listen('', { 'last-event-id': 'abc' });
    await listener.ended;
    expect(listener.status).toBe(400);
    expect(JSON.parse(listener.text())).toMatchObject({ errors: [{ pointer: '#/header/last-event-id' }] });
  });
});
