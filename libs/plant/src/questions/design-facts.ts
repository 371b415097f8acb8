import type { AnswerOf } from '@libs/contracts';
import type { Design } from '@libs/judge';
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

const factOf = (attribute: string, value: string, matters: boolean, names: Names): Fact => {
  const name = names.attribute(attribute);
  const says = names.attributeValue(attribute, value);
  return {
    attribute,
    value,
    says: { en: `${name.en}: ${says.en}`, es: `${name.es}: ${says.es}` },
    matters,
  };
};
