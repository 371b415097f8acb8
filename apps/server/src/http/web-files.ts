import { existsSync } from 'node:fs';
import type { IncomingMessage, ServerResponse } from 'node:http';
import sirv from 'sirv';
import { WEB_HEADERS } from './security-headers';

/** Answers with a file of the web app, or calls `next` when there is none. */
export type WebFiles = (request: IncomingMessage, response: ServerResponse, next: () => void) => void;

/** The build puts a hash into every name under assets/, so a name never changes what it stands for. */
const HASHED = /^\/assets\//;

const setHeaders = (response: ServerResponse, path: string): void => {
  for (const [name, value] of Object.entries(WEB_HEADERS)) response.setHeader(name, value);
  response.setHeader('cache-control', HASHED.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache');
};

/** Undefined where the web app was not built: the API works without it. Unknown addresses are the app's own routes. */
export const webFiles = (folder: string): WebFiles | undefined =>
  existsSync(folder) ? sirv(folder, { single: true, etag: true, setHeaders }) : undefined;
