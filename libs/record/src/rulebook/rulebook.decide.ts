import { accept, assertNever, elapsedMs, reject } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type {
  ApproveProposal,
  IssueRevision,
  ProposeRevision,
  ReturnProposal,
  RulebookCommand,
} from './rulebook.commands';
import type { AgencyApproval, RecordedRulebookEvent, RulebookEvent, Touches } from './rulebook.events';
import { noRevisions } from './rulebook.state';
import type { Proposal, RulebookHistory } from './rulebook.state';

/** Whoever sends a revision has read it already: files that cannot be read never get here. */
export type RulebookRejection =
  | { readonly code: 'proposal-unknown'; readonly proposal: string }
  | { readonly code: 'proposal-over'; readonly proposal: string }
  | { readonly code: 'proposal-outdated'; readonly proposal: string; readonly latest: number }
  | { readonly code: 'approved-by-own-hand'; readonly proposal: string }
  | { readonly code: 'agency-approval-needed' }
  | { readonly code: 'agency-approval-later'; readonly approvedOn: string }
  | { readonly code: 'effective-in-the-past'; readonly effectiveFrom: string }
  | { readonly code: 'nothing-changed' };

export type RulebookFacts = { readonly actor: string; readonly now: string };

type RulebookDecision = Decision<RulebookEvent, RulebookRejection>;

export const decide = (
  command: RulebookCommand,
  history: RulebookHistory,
  facts: RulebookFacts,
): RulebookDecision => {
  switch (command.type) {
    case 'IssueRevision':
      return issue(command, history);
    case 'ProposeRevision':
      return propose(command, history, facts);
    case 'ApproveProposal':
      return approve(command, history, facts);
    case 'ReturnProposal':
      return sendBack(command, history, facts);
    default:
      return assertNever(command);
  }
};

/** Issuing the very same files, effective from the same moment, changes nothing. */
const issue = ({ data }: IssueRevision, { revisions }: RulebookHistory): RulebookDecision => {
  const last = revisions.at(-1);
  if (last?.digest === data.digest && last.effectiveFrom === data.effectiveFrom) return accept();
  if (data.touches !== undefined) {
    const unfit = agencyGuard(data.touches, data.agency ?? null, data.effectiveFrom);
    if (unfit !== null) return reject(unfit);
  }
  return accept({ type: 'RevisionIssued', data: { ...data, revision: (last?.revision ?? 0) + 1 } });
};

/** The agency's approval may still be on its way: it is asked for when the proposal is approved. */
const propose = (
  { data }: ProposeRevision,
  { revisions }: RulebookHistory,
  { now }: RulebookFacts,
): RulebookDecision => {
  const last = revisions.at(-1);
  if (last?.digest === data.digest) return reject({ code: 'nothing-changed' });
  const latest = last?.revision ?? null;
  if (data.base !== latest) {
    return reject({ code: 'proposal-outdated', proposal: data.proposal, latest: latest ?? 0 });
  }
  if (data.effectiveFrom !== null && elapsedMs(now, data.effectiveFrom) < 0) {
    return reject({ code: 'effective-in-the-past', effectiveFrom: data.effectiveFrom });
  }
  return accept({ type: 'RevisionProposed', data });
};

type Found =
  | { readonly ok: true; readonly proposal: Proposal }
  | { readonly ok: false; readonly rejection: RulebookRejection };

const find = ({ proposals, over }: RulebookHistory, id: string): Found => {
  const proposal = proposals.find((open) => open.proposal === id);
  if (proposal !== undefined) return { ok: true, proposal };
  return reject({ code: over.includes(id) ? 'proposal-over' : 'proposal-unknown', proposal: id });
};

/**
 * By someone else than who drafted it, and of the very files that were compared with the latest revision: another
 * one issued in between makes the difference that was looked at a different one.
 */
const approve = (
  { data }: ApproveProposal,
  history: RulebookHistory,
  { actor, now }: RulebookFacts,
): RulebookDecision => {
  const found = find(history, data.proposal);
  if (!found.ok) return found;
  const { draftedBy, proposedAt: _at, base, proposal, ...drafted } = found.proposal;
  if (draftedBy === actor) return reject({ code: 'approved-by-own-hand', proposal });

  const latest = history.revisions.at(-1)?.revision ?? 0;
  if ((base ?? 0) !== latest) return reject({ code: 'proposal-outdated', proposal, latest });

  const agency = data.agency ?? drafted.agency;
  const effectiveFrom = notBefore(now, drafted.effectiveFrom);
  const unfit = agencyGuard(drafted.touches, agency, effectiveFrom);
  if (unfit !== null) return reject(unfit);

  return accept({
    type: 'RevisionIssued',
    data: {
      ...drafted,
      revision: latest + 1,
      effectiveFrom,
      approvedBy: actor,
      proposal,
      draftedBy,
      agency: agency ?? undefined,
    },
  });
};

/** What was to be effective before anybody had approved it is so from the approval on. */
const notBefore = (now: string, wanted: string | null): string =>
  wanted === null || elapsedMs(now, wanted) < 0 ? now : wanted;

/** 24 CFR 3282.361: every change to design or manual is approved before it is built to. */
const agencyGuard = (
  { design, manual }: Touches,
  agency: AgencyApproval | null,
  effectiveFrom: string,
): RulebookRejection | null => {
  if (agency === null) return design || manual ? { code: 'agency-approval-needed' } : null;
  return agency.approvedOn > effectiveFrom.slice(0, 10)
    ? { code: 'agency-approval-later', approvedOn: agency.approvedOn }
    : null;
};

const sendBack = (
  { data }: ReturnProposal,
  history: RulebookHistory,
  { actor }: RulebookFacts,
): RulebookDecision => {
  const found = find(history, data.proposal);
  if (!found.ok) return found;
  const how = found.proposal.draftedBy === actor ? 'withdrawn' : 'returned';
  return accept({ type: 'ProposalReturned', data: { ...data, how } });
};

export const evolve = (history: RulebookHistory, event: RecordedRulebookEvent): RulebookHistory => {
  switch (event.type) {
    case 'RevisionIssued': {
      const issued = { ...event.data, issuedAt: event.occurredAt };
      return { ...without(history, event.data.proposal), revisions: [...history.revisions, issued] };
    }
    case 'RevisionProposed': {
      const proposal = { ...event.data, draftedBy: event.actor, proposedAt: event.occurredAt };
      return { ...history, proposals: [...history.proposals, proposal] };
    }
    case 'ProposalReturned':
      return without(history, event.data.proposal);
    default:
      return assertNever(event);
  }
};

const without = (history: RulebookHistory, id: string | undefined): RulebookHistory =>
  id === undefined
    ? history
    : {
        ...history,
        proposals: history.proposals.filter(({ proposal }) => proposal !== id),
        over: [...history.over, id],
      };

export const RULEBOOK: StreamKind<
  RulebookCommand,
  RulebookHistory,
  RulebookEvent,
  RulebookRejection,
  RulebookFacts
> = { name: 'rulebook', initial: noRevisions, decide, evolve };
