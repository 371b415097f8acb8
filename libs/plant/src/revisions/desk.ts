import type { AnswerOf, BodyOf } from '@libs/contracts';
import type { RulebookFiles } from '@libs/rulebook';
import type { Sender, Span, Told } from '../told';
import type { Asked } from '../questions';
import type { Workings } from '../workings';
import { applyRevision, previewRevision } from './applying';
import { bookQuestion, filesQuestion } from './book';
import { previewOrder } from './order-preview';
import { buildPlanQuestion } from './build-plan';
import { examine, examineProposal } from './examine';
import { nuisanceQuestion } from './nuisance';
import { approve, proposalsQuestion, propose, sendBack } from './proposals';
import type { RetroLine } from './retro-check';
import { retroCheck } from './retro-check';
import { targetOf } from './which';
import type { Which } from './which';

/** Everything about the rulebook itself. Undefined: no such revision, proposal or serial. */
export type RulebookDesk = {
  readonly book: (which: Which) => Promise<AnswerOf<'rulebook'> | undefined>;
  readonly files: (which: Which) => Promise<AnswerOf<'rulebookFiles'> | undefined>;
  readonly nuisance: () => Promise<AnswerOf<'nuisance'>>;
  readonly examine: (files: RulebookFiles) => Promise<AnswerOf<'examination'>>;
  /** Null: the latest revision itself. */
  readonly examineProposal: (proposal: string | null) => Promise<AnswerOf<'examination'> | undefined>;
  readonly proposals: (actor: string) => Promise<AnswerOf<'proposals'>>;
  readonly propose: (body: BodyOf<'proposal'>, sender: Sender) => Promise<Told<AnswerOf<'proposal'>>>;
  readonly approve: (
    proposal: string,
    body: BodyOf<'approval'>,
    sender: Sender,
  ) => Promise<Told<AnswerOf<'approval'>>>;
  readonly sendBack: (
    proposal: string,
    body: BodyOf<'proposalReturn'>,
    sender: Sender,
  ) => Promise<Told<AnswerOf<'proposalReturn'>>>;
  /** What another revision would change for a home on the line; null: the one in force. */
  readonly preview: (
    serial: string,
    revision: number | null,
  ) => Promise<AnswerOf<'revisionPreview'> | undefined>;
  readonly apply: (
    serial: string,
    body: BodyOf<'revisionApplication'>,
    sender: Sender,
  ) => Promise<Told<AnswerOf<'revisionApplication'>>>;
  /** What another order would change for a home; nothing is changed by asking. */
  readonly previewOrder: (
    serial: string,
    body: BodyOf<'orderPreview'>,
  ) => Promise<AnswerOf<'orderPreview'> | undefined>;
  /** Line by line, as it goes: nothing is read before somebody asks for the next line. */
  readonly retroCheck: (which: Which, span: Span) => Promise<AsyncIterable<RetroLine> | undefined>;
  readonly buildPlan: (serial: string) => Promise<AnswerOf<'buildPlan'> | undefined>;
};

export const rulebookDesk = (workings: Workings, asked: Asked): RulebookDesk => ({
  book: bookQuestion(workings),
  files: filesQuestion(workings),
  nuisance: nuisanceQuestion(workings),
  examine: examine(workings),
  examineProposal: examineProposal(workings),
  proposals: proposalsQuestion(workings),
  propose: propose(workings),
  approve: approve(workings),
  sendBack: sendBack(workings),
  preview: previewRevision(workings),
  apply: applyRevision(workings),
  previewOrder: previewOrder(workings),
  retroCheck: async (which, span) => {
    const target = await targetOf(workings, which);
    return target === undefined ? undefined : retroCheck(workings, target, span);
  },
  buildPlan: buildPlanQuestion(asked),
});
