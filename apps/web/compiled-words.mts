import { createRequire } from 'node:module';
import type { Plugin } from 'vite';

const require = createRequire(import.meta.url);
const {
  parse,
}: typeof import('@formatjs/icu-messageformat-parser') = require('@formatjs/icu-messageformat-parser');

const CATALOGUE = /\/words\/(?:en|es)\/[\w-]+\.json$/;
/** A message without blanks is shown as it stands. */
const HAS_BLANKS = /\{/;

/**
 * Messages are read when the app is built, by the very parser that would read them in the browser: a tablet then loads
 * neither the parser nor waits for it.
 */
export const compiledWords = (): Plugin => ({
  name: 'studbook-compiled-words',
  enforce: 'pre',
  transform(code, id) {
    if (!CATALOGUE.test(id)) return null;
    const catalogue: Record<string, string> = JSON.parse(code);
    const compiled = Object.entries(catalogue).map(([key, message]) => [
      key,
      HAS_BLANKS.test(message) ? parse(message, { ignoreTag: true, captureLocation: false }) : message,
    ]);
    return JSON.stringify(Object.fromEntries(compiled));
  },
});

/** The parser's place taken by a stand-in of the same package that says so if it is ever called. */
export const WITHOUT_PARSER = {
  '@formatjs/icu-messageformat-parser': '@formatjs/icu-messageformat-parser/lib/no-parser.js',
} as const;
