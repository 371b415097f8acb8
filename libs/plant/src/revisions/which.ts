import { RULEBOOK } from '@libs/record';
import type { RulebookHistory } from '@libs/record';
import { readRulebook } from '@libs/rulebook';
import type { Rulebook, RulebookFiles } from '@libs/rulebook';
import type { Plans } from '../plans';
import { plansOf } from '../plans';
import type { Workings } from '../workings';

/** A rulebook that is asked about: one that was issued, one that waits for approval, or one that is neither. */
export type Which =
  { readonly revision: number | null } | { readonly proposal: string } | { readonly files: RulebookFiles };

/** A rulebook to judge by, under the number it has or would have. */
export type Target = { readonly revision: number; readonly rulebook: Rulebook; readonly plans: Plans };

export const historyOf = ({ ledger }: Workings): Promise<RulebookHistory> =>
  ledger.state(RULEBOOK, 'rulebook');

export const now = ({ clock }: Pick<Workings, 'clock'>): string => new Date(clock()).toISOString();

/** Undefined: there is no such revision or proposal, or the files cannot be read. */
export const targetOf = async (workings: Workings, which: Which): Promise<Target | undefined> => {
  if ('revision' in which) return issuedTarget(workings, which.revision);
  if ('files' in which) return candidate(which.files, nextNumber(await historyOf(workings)));

  const history = await historyOf(workings);
  const proposed = history.proposals.find(({ proposal }) => proposal === which.proposal);
  return proposed === undefined ? undefined : candidate(proposed.files, nextNumber(history));
};

const issuedTarget = ({ plans }: Workings, revision: number | null): Target | undefined => {
  const known = revision === null ? plans.current() : plans.ofRevision(revision);
  return known === null || known === undefined
    ? undefined
    : { revision: known.revision, rulebook: known.rulebook, plans };
};

export const nextNumber = ({ revisions }: RulebookHistory): number => (revisions.at(-1)?.revision ?? 0) + 1;

/** Read with plans of its own, so that nothing of it is left behind when it is not issued. */
const candidate = (files: RulebookFiles, revision: number): Target | undefined => {
  const read = readRulebook(files);
  if (!read.ok) return undefined;

  const plans = plansOf();
  plans.learn({ revision, effectiveFrom: '1970-01-01T00:00:00.000Z', files });
  return { revision, rulebook: read.rulebook, plans };
};
