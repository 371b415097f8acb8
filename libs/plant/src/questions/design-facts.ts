import type { AnswerOf } from '@libs/contracts';
import type { Design, Words } from '@libs/judge';
import type { Rulebook } from '@libs/rulebook';
import type { Names } from '../names';

type Fact = AnswerOf<'section'>['facts'][number];

/** Design facts in words: those that matter at this station first, in its order, then the rest in the rulebook's. */
export const designFacts = (
  design: Design,
  at: string | null,
  rulebook: Rulebook | undefined,
  names: Names,
): Fact[] => {
  const matters = rulebook?.stations.find(({ id }) => id === at)?.facts ?? [];
  const listed =
    rulebook === undefined ? [] : [...rulebook.attributes, ...rulebook.details].map(({ id }) => id);
  const order = [...new Set([...matters, ...listed, ...Object.keys(design)])];
  return order.flatMap((attribute) => {
    const value = design[attribute];
    return value === undefined ? [] : [factOf(attribute, value, matters.includes(attribute), names)];
  });
};

const factOf = (attribute: string, value: string, matters: boolean, names: Names): Fact => ({
  attribute,
  value,
  says: inWords(attribute, value, names),
  matters,
});

/** A value with words of its own says it all: "wind zone II". A bare one needs its attribute's name: "axles: 3". */
const inWords = (attribute: string, value: string, names: Names): Words => {
  const says = names.attributeValue(attribute, value);
  if (says.en !== value) return says;

  const name = names.attribute(attribute);
  return { en: `${name.en}: ${says.en}`, es: `${name.es}: ${says.es}` };
};
