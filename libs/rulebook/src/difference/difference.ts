import type { Rulebook } from '../rulebook';
import type { Change } from './change';
import { listChanges, plantChanges } from './lists';
import { namingIn } from './naming';
import { operationChanges } from './operations';
import { coverChanges, timeChanges, valueChanges } from './rows';

/** All in which one rulebook differs from another, the values first: those are what people ask about. */
export const differenceOf = (before: Rulebook, after: Rulebook): readonly Change[] => {
  const naming = { before: namingIn(before), after: namingIn(after) };
  const bodies = { before: before.body, after: after.body };
  const both = { before, after };
  return [
    ...valueChanges(bodies, naming),
    ...operationChanges(bodies, naming),
    ...coverChanges(bodies, naming),
    ...timeChanges(bodies, naming),
    ...listChanges(both),
    ...plantChanges(both),
  ];
};

/** Whether a set of changes touches what the inspection agency has approved before. */
export const touchedBy = (
  changes: readonly Pick<Change, 'touches'>[],
): { readonly design: boolean; readonly manual: boolean } => ({
  design: changes.some(({ touches }) => touches === 'design'),
  manual: changes.some(({ touches }) => touches === 'manual'),
});
