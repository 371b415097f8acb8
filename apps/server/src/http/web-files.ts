import { existsSync } from 'node:fs';
import type { IncomingMessage, ServerResponse } from 'node:http';
import sirv from 'sirv';
import { WEB_HEADERS } from './security-headers';

/** Answers with a file of the web app; false when there is none to answer with. */
export type WebFiles = (request: IncomingMessage, response: ServerResponse) => boolean;

/** The build puts a hash into every name under assets/, so a name never changes what it stands for. */
const HASHED = /^\/assets\//;

const setHeaders = (response: ServerResponse, path: string): void => {
  for (const [name, value] of Object.entries(WEB_HEADERS)) response.setHeader(name, value);
  response.setHeader('cache-control', HASHED.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache');
};

/** Undefined where the web app was not built: the API works without it. Unknown addresses are the app's own routes. */
export const webFiles = (folder: string): WebFiles | undefined => {
  if (!existsSync(folder)) return undefined;

  const files = sirv(folder, { single: true, etag: true, setHeaders });
  return (request, response) => {
    const asked = { found: true };
    // The list of files was read once: whether there is one is known before this returns.
    files(request, response, () => {
      asked.found = false;
    });
    return asked.found;
  };
};
