import { elapsedMs } from '@libs/kernel';
import type { RevisionIssued } from './rulebook.events';

export type Issued = Pick<RevisionIssued['data'], 'revision' | 'effectiveFrom' | 'files' | 'digest'>;

/** All revisions, first to last. A plant issues a few a year. */
export type RulebookHistory = { readonly revisions: readonly Issued[] };

export const noRevisions: RulebookHistory = { revisions: [] };

/** The latest revision that is effective at an instant. */
export const inForceAt = ({ revisions }: RulebookHistory, instant: string): Issued | null =>
  revisions.findLast(({ effectiveFrom }) => elapsedMs(effectiveFrom, instant) >= 0) ?? null;
