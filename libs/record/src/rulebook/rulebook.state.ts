import { elapsedMs } from '@libs/kernel';
import type { RevisionIssued, RevisionProposed } from './rulebook.events';

export type Issued = Pick<RevisionIssued['data'], 'revision' | 'effectiveFrom' | 'files' | 'digest'> &
  Partial<
    Pick<RevisionIssued['data'], 'approvedBy' | 'draftedBy' | 'proposal' | 'touches' | 'agency' | 'note'>
  > & { readonly issuedAt?: string };

export type Proposal = RevisionProposed['data'] & {
  readonly draftedBy: string;
  readonly proposedAt: string;
};

/** All revisions, first to last: a plant issues a few a year. And what waits for approval. */
export type RulebookHistory = {
  readonly revisions: readonly Issued[];
  readonly proposals: readonly Proposal[];
  /** Proposals that are over, so that a second answer is told from an unknown one. */
  readonly over: readonly string[];
};

export const noRevisions: RulebookHistory = { revisions: [], proposals: [], over: [] };

/** The latest revision that is effective at an instant. */
export const inForceAt = (
  { revisions }: Pick<RulebookHistory, 'revisions'>,
  instant: string,
): Issued | null => revisions.findLast(({ effectiveFrom }) => elapsedMs(effectiveFrom, instant) >= 0) ?? null;
