import { createServer } from 'node:http';
import type { IncomingHttpHeaders, ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

export type Received = {
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
  readonly event: { readonly [field: string]: unknown };
};
type Answering = (received: Received, answer: ServerResponse) => void;

/** A real web receiver on this machine, which answers as a test says. */
export type Receiver = {
  readonly url: string;
  readonly received: Received[];
  /** How it answers from now on. */
  readonly answer: (how: Answering) => void;
  readonly close: () => Promise<void>;
};

export const takes: Answering = (_received, answer) => void answer.writeHead(204).end();
export const answers =
  (status: number, headers: { readonly [name: string]: string } = {}): Answering =>
  (_received, answer) =>
    void answer.writeHead(status, headers).end();

export const openReceiver = async (): Promise<Receiver> => {
  const received: Received[] = [];
  let how: Answering = takes;
  const server = createServer((request, answer) => {
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      const body = Buffer.concat(chunks).toString('utf8');
      const one = { headers: request.headers, body, event: JSON.parse(body) };
      received.push(one);
      how(one, answer);
    });
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${String(port)}/news`,
    received,
    answer: (next) => {
      how = next;
    },
    close: () =>
      new Promise((closed) => {
        server.closeAllConnections();
        server.close(() => closed());
      }),
  };
};
