import type { Words } from '@libs/judge';
import type { Key } from './catalogue-en';
import { en } from './catalogue-en';
import { es } from './catalogue-es';

/** What is filled in: a name or a number, the same in both languages, or words. */
export type Fill = { readonly [placeholder: string]: string | number | Words };

/** A sentence of the catalogues in both languages. A placeholder with nothing to fill it stays empty. */
export const say = (key: Key, fill: Fill = {}): Words => ({
  en: filled(en[key], fill, 'en'),
  es: filled(es[key], fill, 'es'),
});

const filled = (sentence: string, fill: Fill, language: keyof Words): string =>
  sentence.replace(/\{(\w+)\}/g, (_, placeholder: string) => {
    const given = fill[placeholder] ?? '';
    return typeof given === 'object' ? given[language] : String(given);
  });

export const isKey = (key: string): key is Key => Object.hasOwn(en, key);

/** The same text in both languages: numbers, serials, what a person typed. */
export const same = (text: string): Words => ({ en: text, es: text });

export const NOTHING: Words = same('');

export const joined = (parts: readonly Words[], by: string | Words): Words => ({
  en: parts.map((part) => part.en).join(typeof by === 'string' ? by : by.en),
  es: parts.map((part) => part.es).join(typeof by === 'string' ? by : by.es),
});

/** A sentence for none, one or many of a thing. */
export const counted = (
  keys: { readonly one: Key; readonly many: Key },
  count: number,
  fill: Fill = {},
): Words => say(count === 1 ? keys.one : keys.many, { ...fill, count });
