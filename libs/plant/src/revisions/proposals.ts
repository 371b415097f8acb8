import type { AnswerOf, BodyOf } from '@libs/contracts';
import { canonicalJson } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import type { Outcome } from '@libs/ledger';
import { RULEBOOK } from '@libs/record';
import type { Proposal, RulebookCommand } from '@libs/record';
import { differenceOf, readRulebook, touchedBy } from '@libs/rulebook';
import type { Rulebook } from '@libs/rulebook';
import { sha256Hex } from '../plans';
import type { Sender, Told } from '../told';
import { arrivalOf, askLedger, rejected, sealedText } from '../telling';
import type { Arrival } from '../telling';
import type { Workings } from '../workings';
import { historyOf, now } from './which';

export const NOTE_AT = { stream: 'rulebook/rulebook', field: 'note' } as const;

/** Filed under the sender's own name for it, so that the same sending twice is one proposal. */
export const propose =
  (workings: Workings) =>
  async (body: BodyOf<'proposal'>, sender: Sender): Promise<Told<AnswerOf<'proposal'>>> => {
    const read = readRulebook(body.files);
    if (!read.ok) return { ok: false, rejection: { code: 'rulebook-unreadable', problems: read.problems } };

    const { files, note, base, ...told } = body;
    const digest = sha256Hex(canonicalJson(files));
    const arrival = arrivalFor(workings, 'proposal', { ...told, base, digest, ...noted(note) }, sender);
    const outcome = await ask(workings, arrival, {
      type: 'ProposeRevision',
      data: {
        proposal: sender.key,
        base,
        effectiveFrom: told.effectiveFrom ?? null,
        files,
        digest,
        touches: touches(workings, read.rulebook, told.touches),
        agency: told.agency ?? null,
        ...sealed(workings, arrival, note),
      },
    });
    if (!outcome.ok) return rejected(outcome.rejection, told);
    const [event] = outcome.events;
    return { ok: true, answer: { proposal: sender.key, position: event?.position ?? 0 } };
  };

/** What the comparison finds, and whatever the drafter knows besides. */
const touches = (
  { plans }: Workings,
  rulebook: Rulebook,
  claimed: BodyOf<'proposal'>['touches'],
): Proposal['touches'] => {
  const base = plans.current();
  const found =
    base === null ? { design: false, manual: false } : touchedBy(differenceOf(base.rulebook, rulebook));
  return {
    design: found.design || claimed?.design === true,
    manual: found.manual || claimed?.manual === true,
  };
};

export const approve =
  (workings: Workings) =>
  async (
    proposal: string,
    { agency = null }: { readonly agency?: BodyOf<'approval'>['agency'] | null },
    sender: Sender,
  ): Promise<Told<AnswerOf<'approval'>>> => {
    const arrival = arrivalFor(workings, 'approval', { proposal, agency }, sender);
    const outcome = await ask(workings, arrival, { type: 'ApproveProposal', data: { proposal, agency } });
    if (!outcome.ok) return rejected(outcome.rejection, {});

    const { revisions } = await historyOf(workings);
    for (const issued of revisions) workings.plans.learn(issued);
    const issued = revisions.find((revision) => revision.proposal === proposal);
    if (issued === undefined)
      throw new Error('The proposal was approved and its revision is not in the ledger');
    return { ok: true, answer: { revision: issued.revision, effectiveFrom: issued.effectiveFrom } };
  };

export const sendBack =
  (workings: Workings) =>
  async (
    proposal: string,
    { note }: BodyOf<'proposalReturn'>,
    sender: Sender,
  ): Promise<Told<AnswerOf<'proposalReturn'>>> => {
    const arrival = arrivalFor(workings, 'proposalReturn', { proposal, ...noted(note) }, sender);
    const data = { proposal, ...sealed(workings, arrival, note) };
    const outcome = await ask(workings, arrival, { type: 'ReturnProposal', data });
    return outcome.ok ? { ok: true, answer: { returned: true } } : rejected(outcome.rejection, {});
  };

type Body = { readonly via: 'tablet'; readonly [field: string]: unknown };

const arrivalFor = (
  workings: Workings,
  route: string,
  told: { readonly [field: string]: unknown },
  sender: Sender,
): Arrival<Body> => arrivalOf(workings, { route, body: { ...told, via: 'tablet' }, sender });

const noted = (note: string | undefined): { readonly note?: string } => (note === undefined ? {} : { note });

const sealed = (
  workings: Workings,
  arrival: Arrival,
  note: string | undefined,
): { readonly note?: string } =>
  note === undefined
    ? {}
    : {
        note: sealedText(workings, arrival, {
          ref: { kind: 'rulebook', serial: 'rulebook' },
          field: NOTE_AT.field,
          text: note,
        }),
      };

export const ask = (workings: Workings, arrival: Arrival, command: RulebookCommand): Promise<Outcome> =>
  askLedger(workings, arrival, [
    partOf({
      kind: RULEBOOK,
      id: 'rulebook',
      command,
      facts: (_read, meta) => ({ actor: meta.actor, now: arrival.receivedAt }),
    }),
  ]);

/** What waits for approval, the latest first. */
export const proposalsQuestion =
  (workings: Workings) =>
  async (actor: string): Promise<AnswerOf<'proposals'>> => {
    const { proposals, revisions } = await historyOf(workings);
    const latest = revisions.at(-1)?.revision ?? null;
    return {
      proposals: [...proposals].reverse().map((open) => ({
        proposal: open.proposal,
        draftedBy: workings.names.person(open.draftedBy),
        own: open.draftedBy === actor,
        proposedAt: open.proposedAt,
        base: open.base,
        outdated: open.base !== latest,
        effectiveFrom: open.effectiveFrom,
        touches: open.touches,
        agency: open.agency,
        note: open.note === undefined ? null : workings.sealing.unseal(open.note, NOTE_AT),
      })),
    };
  };

export const isInForce = (workings: Workings, revision: number): boolean =>
  workings.plans.inForce(now(workings))?.revision === revision;
