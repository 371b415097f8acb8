import type { Json, JsonObject } from './json';

/**
 * The RFC 8785 text of a JSON object: what is stored and hashed. Members that are undefined are absent.
 * Numbers must be finite and text well-formed Unicode (`hasCanonicalForm`): checked at the edge, and once
 * more by the ledger before it hashes, because RFC 8785 has no form for the others.
 *
 * The engine's own serialiser writes numbers and strings exactly as RFC 8785 asks; only the order of members
 * differs. So members are put in order first, and what stands in order already is not copied.
 */
export const canonicalJson = (value: JsonObject): string => {
  const sorted = arranged(value);
  return isInOrder(sorted) ? JSON.stringify(sorted) : written(sorted);
};

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

/** The value with all members in order, at every depth; itself, not a copy, where they are. */
const arranged = (value: Json): Json => {
  if (typeof value !== 'object' || value === null) return value;
  if (isList(value)) return arrangedItems(value);
  return namesAscend(value) ? arrangedMembers(value) : sortedMembers(value);
};

const arrangedItems = (list: readonly Json[]): readonly Json[] => {
  let copy: Json[] | undefined;
  for (const [index, item] of list.entries()) {
    const inner = arranged(item);
    if (inner !== item) (copy ??= [...list])[index] = inner;
  }
  return copy ?? list;
};

const arrangedMembers = (object: JsonObject): JsonObject => {
  let copy: Members | undefined;
  for (const name in object) {
    const member = object[name];
    if (typeof member !== 'object' || member === null) continue;
    const inner = arranged(member);
    if (inner !== member) put((copy ??= { ...object }), name, inner);
  }
  return copy ?? object;
};

const sortedMembers = (object: JsonObject): JsonObject => {
  const copy: Members = {};
  for (const name of Object.keys(object).sort()) {
    const member = object[name];
    if (member !== undefined) put(copy, name, arranged(member));
  }
  return copy;
};

type Members = { [name: string]: Json | undefined };

/** Assigned like any other, a member of this one name would become the object's prototype and be lost. */
const put = (members: Members, name: string, value: Json): void => {
  if (name === '__proto__') Object.defineProperty(members, name, { value, enumerable: true });
  else members[name] = value;
};

const namesAscend = (object: JsonObject): boolean => {
  let before: string | undefined;
  for (const name in object) {
    if (before !== undefined && name < before) return false;
    before = name;
  }
  return true;
};

/** Whether all members, at every depth, are enumerated in order of their names' UTF-16 code units. */
const isInOrder = (value: Json | undefined): boolean => {
  if (typeof value !== 'object' || value === null) return true;
  if (isList(value)) return value.every(isInOrder);
  if (!namesAscend(value)) return false;

  for (const name in value) if (!isInOrder(value[name])) return false;
  return true;
};

/** Member by member, where no copy can be in order: an engine enumerates names like "10" and "9" by number. */
const written = (value: Json): string => {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (isList(value)) return `[${value.map(written).join(',')}]`;

  const members = Object.keys(value)
    .sort()
    .flatMap((name) => {
      const member = value[name];
      return member === undefined ? [] : [`${JSON.stringify(name)}:${written(member)}`];
    });
  return `{${members.join(',')}}`;
};
