import { namesFrom } from '@libs/contracts';
import type { Names as PlantNames } from '@libs/contracts';
import type { Words } from '@libs/judge';
import { labelsOf } from '@libs/rulebook';
import type { Named, Rulebook } from '@libs/rulebook';
import type { Plans } from './plans';

/** What a rulebook's codes are called, design attributes too. A code without a name is shown as it is. */
export type Names = PlantNames & {
  readonly attribute: (id: string) => Words;
  readonly attributeValue: (attribute: string, value: string) => Words;
};

/** Names by revision, and of people: what a question needs to put an answer into words. */
export type NameBook = {
  /** Of the revision issued last; of codes only while the plant has none. */
  readonly current: () => Names;
  readonly ofRevision: (revision: number | null) => Names;
  /** A person's name in clear; the opaque id where the key is gone or nobody was enrolled under it. */
  readonly person: (actor: string) => string;
};

const KNOWN = new WeakMap<Rulebook, Names>();

/** Worked out once a rulebook. */
export const namesOf = (rulebook: Rulebook): Names => {
  const known = KNOWN.get(rulebook);
  if (known !== undefined) return known;

  const names = {
    ...namesFrom(rulebook, labelsOf(rulebook)),
    attribute: lookUp([...rulebook.attributes, ...rulebook.details]),
    attributeValue: attributeValues(rulebook),
  };
  KNOWN.set(rulebook, names);
  return names;
};

export const nameBook = (plans: Plans, person: (actor: string) => string): NameBook => {
  const namesIn = (known: { readonly rulebook: Rulebook } | null | undefined): Names =>
    known === null || known === undefined ? codesAsNames : namesOf(known.rulebook);
  return {
    current: () => namesIn(plans.current()),
    ofRevision: (revision) =>
      namesIn(revision === null ? plans.current() : (plans.ofRevision(revision) ?? plans.current())),
    person,
  };
};

const asIs = (code: string): Words => ({ en: code, es: code });

const lookUp = (named: readonly Named[]): ((code: string) => Words) => {
  const byId = new Map(named.map(({ id, name }) => [id, name]));
  return (code) => byId.get(code) ?? asIs(code);
};

const attributeValues = ({ attributes, texts }: Rulebook): Names['attributeValue'] => {
  const byBoth = new Map(
    attributes.flatMap(({ id, values }) =>
      values.map(({ value, says }) => [`${id} ${value}`, says] as const),
    ),
  );
  const text = lookUp(texts);
  return (attribute, value) => byBoth.get(`${attribute} ${value}`) ?? text(value);
};

/** While the plant has no rulebook, codes are all there is to say. */
const codesAsNames: Names = {
  ...namesFrom({ operations: [], stations: [], places: [], components: [], symptoms: [], crews: [] }),
  attribute: asIs,
  attributeValue: (_attribute, value) => asIs(value),
};
