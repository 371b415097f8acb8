/**
 * A load generator in a process of its own, so that what it costs is not counted against the server.
 * Plain sockets and a search for the end of each answer: a full HTTP client would need more of the second core
 * than the server leaves. Told what to send over IPC, it answers with how many requests a second were answered.
 */
import { connect } from 'node:net';
import { randomBytes } from 'node:crypto';

/** UUIDv7, as devices make them: the first 48 bits are the time. */
const newKey = () => {
  const bytes = randomBytes(16);
  bytes.writeUIntBE(Date.now(), 0, 6);
  bytes[6] = 0x70 | (bytes[6] & 0x0f);
  bytes[8] = 0x80 | (bytes[8] & 0x3f);
  const hex = bytes.toString('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
};

const requestFor = ({ path, token, host }, body) =>
  `POST ${path} HTTP/1.1\r\nhost: ${host}\r\nauthorization: Bearer ${token}\r\nidempotency-key: "${newKey()}"\r\n` +
  `content-type: application/json\r\ncontent-length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;

/** The length of the first answer in `text`, or 0 while it is not whole. Answers of this API give their length. */
const answerLength = (text) => {
  const head = text.indexOf('\r\n\r\n');
  if (head < 0) return 0;
  const length = Number(/content-length: (\d+)/i.exec(text.slice(0, head))?.[1] ?? NaN);
  if (Number.isNaN(length)) throw new Error(`An answer without a length: ${text.slice(0, 200)}`);
  return text.length >= head + 4 + length ? head + 4 + length : 0;
};

const run = ({ port, host, connections, requests, status, bodies, ...target }) =>
  new Promise((resolve, reject) => {
    const tookMs = [];
    let sent = 0;
    let open = connections;
    const sockets = [];
    const done = () => {
      open -= 1;
      if (open === 0) resolve({ answered: tookMs.length, tookMs });
    };

    for (let index = 0; index < connections; index += 1) {
      const socket = connect({ port, host, noDelay: true });
      sockets.push(socket);
      let began = 0;
      let held = '';
      const send = () => {
        if (sent >= requests) return socket.end(done);
        began = performance.now();
        socket.write(requestFor({ ...target, host }, bodies[sent++ % bodies.length]));
      };
      socket.setEncoding('latin1');
      socket.on('connect', send);
      socket.on('data', (chunk) => {
        held += chunk;
        const length = answerLength(held);
        if (length === 0) return;
        if (!held.startsWith(`HTTP/1.1 ${status}`)) return reject(new Error(held.slice(0, 600)));
        tookMs.push(performance.now() - began);
        held = held.slice(length);
        send();
      });
      socket.on('error', reject);
    }
  });

process.on('message', (order) => {
  const began = performance.now();
  run(order).then(
    ({ answered, tookMs }) => {
      const sorted = tookMs.sort((a, b) => a - b);
      const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
      process.send({
        answered,
        perSecond: answered / ((performance.now() - began) / 1000),
        p50Ms: at(0.5),
        p99Ms: at(0.99),
      });
    },
    (error) => process.send({ failed: error.message }),
  );
});
