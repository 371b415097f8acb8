import { readStream } from '../support/server-sent-events';
import { serverSentEvents } from './cases/server-sent-events.json';

/** The reader the server's live stream is read with in tests, held to HTML Living Standard, section 9.2.6. */
describe('a reader of server-sent events', () => {
  it.each(serverSentEvents)('reads $name', ({ stream, events, retry }) => {
    expect(readStream(stream)).toStrictEqual({ events, retry });
  });
});
