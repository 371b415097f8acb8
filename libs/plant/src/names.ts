import type { Words } from '@libs/judge';
import type { Named, Rulebook } from '@libs/rulebook';

/** What a rulebook's codes are called, in both languages. A code without a name is shown as it is. */
export type Names = {
  readonly operation: (code: string) => Words;
  readonly station: (code: string) => Words;
  readonly crew: (code: string) => Words;
  readonly place: (code: string) => Words;
  readonly attribute: (code: string) => Words;
  readonly attributeValue: (attribute: string, value: string) => Words;
  readonly reason: (code: string) => Words;
  readonly lotKind: (code: string) => Words;
  readonly instrumentKind: (code: string) => Words;
  readonly component: (code: string) => Words;
  readonly symptom: (code: string) => Words;
};

/** Names by revision, and of people: what a question needs to put an answer into words. */
export type NameBook = {
  /** Of the revision issued last; of codes only while the plant has none. */
  readonly current: () => Names;
  readonly ofRevision: (revision: number | null) => Names;
  /** A person's name in clear; the opaque id where the key is gone or nobody was enrolled under it. */
  readonly person: (actor: string) => string;
};

export const namesOf = (rulebook: Rulebook): Names => ({
  operation: lookUp(rulebook.operations),
  station: lookUp(rulebook.stations),
  crew: lookUp(rulebook.crews),
  place: lookUp(rulebook.places),
  attribute: lookUp([...rulebook.attributes, ...rulebook.details]),
  attributeValue: attributeValues(rulebook),
  reason: lookUp(rulebook.reasons),
  lotKind: lookUp(rulebook.lotKinds),
  instrumentKind: lookUp(rulebook.instrumentKinds),
  component: lookUp(rulebook.components),
  symptom: lookUp(rulebook.symptoms),
});

const asIs = (code: string): Words => ({ en: code, es: code });

const lookUp = (named: readonly Named[]): ((code: string) => Words) => {
  const byId = new Map(named.map(({ id, name }) => [id, name]));
  return (code) => byId.get(code) ?? asIs(code);
};

const attributeValues = ({ attributes }: Rulebook): Names['attributeValue'] => {
  const byBoth = new Map(
    attributes.flatMap(({ id, values }) =>
      values.map(({ value, says }) => [`${id} ${value}`, says] as const),
    ),
  );
  return (attribute, value) => byBoth.get(`${attribute} ${value}`) ?? asIs(value);
};

/** While the plant has no rulebook, codes are all there is to say. */
export const codesAsNames: Names = {
  operation: asIs,
  station: asIs,
  crew: asIs,
  place: asIs,
  attribute: asIs,
  attributeValue: (_attribute, value) => asIs(value),
  reason: asIs,
  lotKind: asIs,
  instrumentKind: asIs,
  component: asIs,
  symptom: asIs,
};
