import type { Domain, When } from './body';
import type { ComplainHere } from './complain';
import { designsOver, matches } from './design-space';

/** A row of a decision table: when it speaks, and all it says, as text that can be compared. */
export type TableEntry = { readonly row: number; readonly when: When; readonly says: string };

/**
 * Two rows of a decision table may overlap where the one has more conditions, or where both say the same. Where
 * two equally specific rows that disagree would both be the most specific for some design, nobody can
 * know what is required: an error when the rulebook is read, not on the floor.
 */
export const checkDisagreements = (
  entries: readonly TableEntry[],
  scope: { readonly applies: When; readonly domains: ReadonlyMap<string, Domain> },
  complainAt: (row: number) => ComplainHere,
  column: string,
): void => {
  const pairs = pairsOf(entries).filter(([a, b]) => a.when.length === b.when.length && a.says !== b.says);
  if (pairs.length === 0) return;

  const designs = designsOver([...entries.map(({ when }) => when), scope.applies], scope.domains);
  for (const [first, second] of pairs) {
    const clash = designs?.find(
      (design) =>
        [first.when, second.when, scope.applies].every((when) => matches(when, design)) &&
        !entries.some(({ when }) => when.length > first.when.length && matches(when, design)),
    );
    if (clash !== undefined) {
      complainAt(second.row)(column, `disagrees with row ${first.row}, as specific, ${where(clash)}`);
    }
    if (designs === undefined) complainAt(second.row)(column, 'has too many conditions to be checked');
  }
};

const pairsOf = (entries: readonly TableEntry[]): readonly (readonly [TableEntry, TableEntry])[] =>
  entries.flatMap((first, index) => entries.slice(index + 1).map((second) => [first, second] as const));

const where = (design: { readonly [attribute: string]: string }): string => {
  const facts = Object.entries(design).map(([attribute, value]) => `${attribute} is ${value}`);
  return facts.length === 0 ? 'for every design' : `where ${facts.join(', ')}`;
};
