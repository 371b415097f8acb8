import type { Design } from '@libs/judge';
import { isDecimal } from '@libs/kernel';
import type { Domain, RulebookBody } from './body';
import type { RulebookProblem } from './rulebook';

/**
 * A home's own design does not give what differs between its sections: where the rulebook has such attributes and
 * the design none of them, it is a home's, and its plan is the work at the site.
 */
export const isHomes = ({ domains }: RulebookBody, design: Design): boolean => {
  const ofSection = [...domains.values()].filter((domain) => domain.ofSection);
  return ofSection.length > 0 && ofSection.every(({ id }) => design[id] === undefined);
};

/** What of a design is unknown, missing, or of no value the attribute may have. */
export const checkDesign = (body: RulebookBody, design: Design): readonly RulebookProblem[] => {
  const home = isHomes(body, design);
  const missing = [...body.askedAttributes]
    .filter((id) => design[id] === undefined && !(home && body.domains.get(id)?.ofSection === true))
    .map((id) => problem(id, 'is missing from the design'));
  const wrong = Object.entries(design).flatMap(([id, value]) => {
    const domain = body.domains.get(id);
    if (domain !== undefined) return wrongValue(domain, value);
    return body.details.has(id)
      ? []
      : [problem(id, 'is no attribute or detail of the design in this rulebook')];
  });
  return [...missing, ...wrong];
};

const wrongValue = ({ id, numeric, values }: Domain, value: string): readonly RulebookProblem[] => {
  if (values.length > 0) {
    return values.includes(value)
      ? []
      : [problem(id, `"${value}" is none of its values: ${values.join(', ')}`)];
  }
  return numeric && !isDecimal(value) ? [problem(id, `"${value}" is no number`)] : [];
};

const problem = (column: string, says: string): RulebookProblem => ({ file: 'design', row: 1, column, says });
