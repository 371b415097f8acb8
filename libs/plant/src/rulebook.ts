import { canonicalJson } from '@libs/kernel';
import { differenceOf, readRulebook, touchedBy } from '@libs/rulebook';
import type { Rulebook } from '@libs/rulebook';
import type { IssueRevision } from '@libs/record';
import { sha256Hex } from './plans';
import type { Plant } from './plant';
import type { AtTheMachine } from './told';
import { ask } from './revisions/proposals';
import { historyOf } from './revisions/which';
import { arrivalOf } from './telling';
import type { Workings } from './workings';

/**
 * Issued at the machine itself: a plant's first revision, a history that is brought in, and what an administrator
 * there answers for. Read first: files with a problem in them never get into the ledger.
 */
export const issueRevision =
  (workings: Workings): Plant['issueRevision'] =>
  async (files, effectiveFrom, sender, atTheMachine = {}) => {
    const read = readRulebook(files);
    if (!read.ok) return read;

    const digest = sha256Hex(canonicalJson({ ...files }));
    const body = { via: 'import' as const, effectiveFrom, digest, ...atTheMachine };
    const arrival = arrivalOf(workings, { route: 'issueRevision', body, sender });
    const data = { effectiveFrom, files, digest, ...approvalOf(workings, read.rulebook, atTheMachine) };
    const outcome = await ask(workings, arrival, { type: 'IssueRevision', data });
    if (!outcome.ok) return { ok: false, problems: [], rejection: outcome.rejection };

    const issued = await issuedAs(workings, digest);
    return { ok: true, revision: issued };
  };

type Approval = Pick<IssueRevision['data'], 'approvedBy' | 'touches' | 'agency'>;

/** What it touches is asked only of one that names who approved it: a history comes in as it was. */
const approvalOf = (
  { plans }: Workings,
  rulebook: Rulebook,
  { approvedBy, agency }: AtTheMachine,
): Approval => {
  if (approvedBy === undefined) return { approvedBy: null };
  const base = plans.current();
  const touches = base === null ? undefined : touchedBy(differenceOf(base.rulebook, rulebook));
  return {
    approvedBy,
    ...(touches === undefined ? {} : { touches }),
    ...(agency === undefined ? {} : { agency }),
  };
};

const issuedAs = async (workings: Workings, digest: string): Promise<number> => {
  const { revisions } = await historyOf(workings);
  for (const issued of revisions) workings.plans.learn(issued);
  const issued = revisions.findLast((revision) => revision.digest === digest);
  if (issued === undefined) throw new Error('The revision was issued and is not in the ledger');
  return issued.revision;
};
