import type { ConnectionError } from 'fastify';
import type { Socket } from 'node:net';
import { problemBody } from './problem';
import { API_HEADERS } from './security-headers';

const SAID: { readonly [code: string]: readonly [number, string, string] } = {
  HPE_HEADER_OVERFLOW: [431, 'Request Header Fields Too Large', 'The address or the headers are too long'],
  ERR_HTTP_REQUEST_TIMEOUT: [408, 'Request Timeout', 'The request took too long to arrive'],
};
const UNREADABLE = [400, 'Bad Request', 'That is no HTTP request'] as const;

/** What never became a request is answered like any other: as problem details, with the headers of every answer. */
export const answerUnparsed = (fault: ConnectionError, socket: Socket): void => {
  // Whoever has hung up, or is being answered already, is told nothing.
  if (fault.code === 'ECONNRESET' || !socket.writable) {
    socket.destroy();
    return;
  }
  const [status, reason, title] = SAID[fault.code] ?? UNREADABLE;
  const body = JSON.stringify(problemBody({ status, code: 'request-malformed', title }));
  const headers = {
    ...API_HEADERS,
    'content-type': 'application/problem+json; charset=utf-8',
    'content-length': String(Buffer.byteLength(body)),
    connection: 'close',
  };
  const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}\r\n`);
  socket.end(`HTTP/1.1 ${String(status)} ${reason}\r\n${lines.join('')}\r\n${body}`);
};
