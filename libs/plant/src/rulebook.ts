import { canonicalJson } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import { RULEBOOK } from '@libs/record';
import { readRulebook } from '@libs/rulebook';
import { sha256Hex } from './plans';
import type { Plant } from './plant';
import { arrivalOf, askLedger } from './telling';
import type { Workings } from './workings';

/** Read first: files with a problem in them never get into the ledger. */
export const issueRevision =
  (workings: Workings): Plant['issueRevision'] =>
  async (files, effectiveFrom, sender) => {
    const read = readRulebook(files);
    if (!read.ok) return read;

    const digest = sha256Hex(canonicalJson({ ...files }));
    const arrival = arrivalOf(workings, {
      route: 'issueRevision',
      body: { via: 'import' as const, effectiveFrom, digest },
      sender,
    });
    const outcome = await askLedger(workings, arrival, [
      partOf({
        kind: RULEBOOK,
        id: 'rulebook',
        command: { type: 'IssueRevision', data: { effectiveFrom, files, digest, approvedBy: null } },
        facts: () => ({}),
      }),
    ]);
    if (!outcome.ok) throw new Error(`The revision was not issued: ${outcome.rejection.code}`);
    const { revisions } = await workings.ledger.state(RULEBOOK, 'rulebook');
    for (const issued of revisions) workings.plans.learn(issued);
    const issued = revisions.findLast((revision) => revision.digest === digest);
    if (issued === undefined) throw new Error('The revision was issued and is not in the ledger');
    return { ok: true, revision: issued.revision };
  };
