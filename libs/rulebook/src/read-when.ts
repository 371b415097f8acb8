import type { Test } from '@libs/judge';
import type { Domain, When } from './body';
import type { ComplainHere } from './complain';
import { compileCell } from './feel';

/** Conditions on the design, compiled; a test that no value of its attribute could ever meet is complained of. */
export const readWhen = (
  cells: { readonly [attribute: string]: string },
  domains: ReadonlyMap<string, Domain>,
  complain: ComplainHere,
): When =>
  Object.entries(cells).flatMap(([attribute, cell]) => {
    const domain = domains.get(attribute);
    if (domain === undefined) {
      complain(attribute, `\`${attribute}\` is no attribute of the design`);
      return [];
    }
    const compiled = compileCell(cell);
    if (!compiled.ok) {
      complain(attribute, compiled.says);
      return [];
    }
    if (compiled.test.is === 'any') return [];
    wrongTests(compiled.test, domain).forEach((says) => complain(attribute, says));
    return [{ attribute, test: compiled.test }];
  });

const wrongTests = (test: Test, domain: Domain): readonly string[] => {
  switch (test.is) {
    case 'anyOf':
      return test.tests.flatMap((one) => wrongTests(one, domain));
    case 'not':
      return wrongTests(test.test, domain);
    case 'text':
      return wrongText(test.text, domain);
    case 'day':
    case 'days':
      return [`\`${domain.id}\` is no day: write its values in quotes`];
    case 'boolean':
      return [`\`${domain.id}\` is neither true nor false: write its values in quotes`];
    case 'any':
      return [];
    default:
      return domain.numeric ? [] : [`\`${domain.id}\` is not a number: write its values in quotes`];
  }
};

const wrongText = (text: string, { id, numeric, values }: Domain): readonly string[] => {
  if (numeric) return [`"${text}" is text, and \`${id}\` is a number`];
  return values.includes(text) ? [] : [`"${text}" is no value of \`${id}\``];
};
