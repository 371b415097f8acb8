import { accept } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type { RulebookCommand } from './rulebook.commands';
import type { RecordedRulebookEvent, RulebookEvent } from './rulebook.events';
import { noRevisions } from './rulebook.state';
import type { RulebookHistory } from './rulebook.state';

/** Whoever issues a revision has read it already: files that cannot be read never get here. */
export type RulebookRejection = { readonly code: never };
export type RulebookFacts = { readonly [none: string]: never };

/** Issuing the very same files, effective from the same moment, changes nothing. */
export const decide = (
  { data }: RulebookCommand,
  { revisions }: RulebookHistory,
): Decision<RulebookEvent, RulebookRejection> => {
  const last = revisions.at(-1);
  if (last?.digest === data.digest && last.effectiveFrom === data.effectiveFrom) return accept();

  return accept({ type: 'RevisionIssued', data: { ...data, revision: (last?.revision ?? 0) + 1 } });
};

export const evolve = ({ revisions }: RulebookHistory, { data }: RecordedRulebookEvent): RulebookHistory => {
  const { revision, effectiveFrom, files, digest } = data;
  return { revisions: [...revisions, { revision, effectiveFrom, files, digest }] };
};

export const RULEBOOK: StreamKind<
  RulebookCommand,
  RulebookHistory,
  RulebookEvent,
  RulebookRejection,
  RulebookFacts
> = { name: 'rulebook', initial: noRevisions, decide, evolve };
