import type { Json, JsonObject } from './json';

/**
 * The RFC 8785 text of a JSON object: what is stored and hashed. Members that are undefined are absent.
 * Numbers must be finite and text well-formed Unicode (`hasCanonicalForm`): checked at the edge, and once
 * more by the ledger before it hashes, because RFC 8785 has no form for the others.
 *
 * The engine's own serialiser writes numbers and strings exactly as RFC 8785 asks; only the order of the
 * members differs. Where that is in order already, as in the envelopes the ledger builds, it does it all.
 */
export const canonicalJson = (value: JsonObject): string =>
  isInOrder(value) ? JSON.stringify(value) : written(value);

/** Whether RFC 8785 has a form for it: finite numbers, no half of a surrogate pair. */
export const hasCanonicalForm = (value: Json | undefined): boolean => {
  switch (typeof value) {
    case 'string':
      return !ANY_SURROGATE.test(value) || !LONE_SURROGATE.test(value);
    case 'number':
      return Number.isFinite(value);
    case 'object':
      return value === null || everyMember(value, hasCanonicalForm);
    default:
      return true;
  }
};

/** Almost no text has any, and this looks at code units only: it spares the slower look below. */
const ANY_SURROGATE = /[\ud800-\udfff]/;
/** Under the u flag a pair is one character, so that only halves match. */
const LONE_SURROGATE = /\p{Surrogate}/u;

const isList = (value: readonly Json[] | JsonObject): value is readonly Json[] => Array.isArray(value);

const everyMember = (
  value: readonly Json[] | JsonObject,
  holds: (member: Json | undefined) => boolean,
): boolean => {
  if (isList(value)) return value.every(holds);

  for (const name in value) {
    if (!holds(name) || !holds(value[name])) return false;
  }
  return true;
};

/** Whether all members, at every depth, are enumerated in order of their names' UTF-16 code units. */
const isInOrder = (value: Json | undefined): boolean => {
  if (typeof value !== 'object' || value === null) return true;
  if (isList(value)) return value.every(isInOrder);

  let before: string | undefined;
  for (const name in value) {
    if ((before !== undefined && name < before) || !isInOrder(value[name])) return false;
    before = name;
  }
  return true;
};

/** Sorting and copying would not do: an engine enumerates names like "10" and "9" by number, whatever the order. */
const written = (value: Json | undefined): string => {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value ?? null);
  if (isList(value)) return `[${value.map(written).join(',')}]`;

  let text = '';
  for (const name of Object.keys(value).sort()) {
    const member = value[name];
    if (member === undefined) continue;
    text += `${text === '' ? '{' : ','}${quoted(name)}:${typeof member === 'string' ? quoted(member) : written(member)}`;
  }
  return text === '' ? '{}' : `${text}}`;
};

const NEEDS_ESCAPE = /[\u0000-\u001f"\\\ud800-\udfff]/;
const quoted = (text: string): string => (NEEDS_ESCAPE.test(text) ? JSON.stringify(text) : `"${text}"`);
