import { z } from 'zod';
import { BuildPlanAnswer } from '../plan-shapes';
import * as shapes from '../rulebook-shapes';
import { Day, Reference } from '../shapes';
import { get, tell } from './route';

/** Who drafts and approves: never the same person for one revision. */
const managers = ['quality-manager', 'administrator'] as const;

const number = z.string().regex(/^[1-9]\d{0,6}$/, 'a revision: digits');
const revision = { required: false, about: 'Revision; left out: the latest', schema: number };
const proposal = { required: false, about: 'A proposal in place of a revision', schema: Reference };

/** The rulebook: read, changed, issued, and run over history. */
export const rulebookRoutes = {
  rulebook: get('/api/rulebook', 'The rulebook, for people to read', shapes.RulebookAnswer, {
    query: { revision, proposal },
  }),
  rulebookFiles: get('/api/rulebook/files', 'The files of a revision', shapes.RulebookFilesAnswer, {
    query: { revision, proposal },
  }),
  nuisance: get(
    '/api/rulebook/nuisance',
    'How often each rule was overruled or cleared as a missing signature',
    shapes.NuisanceAnswer,
  ),
  examination: tell(
    '/api/rulebook/examination',
    'What is wrong with these files, what they change, and what they would say of sections on the line',
    { body: shapes.ExaminationRequest, answer: shapes.ExaminationAnswer },
    { access: managers, status: 200, keyed: false },
  ),
  proposals: get('/api/rulebook/proposals', 'Revisions that wait for approval', shapes.ProposalsAnswer),
  proposal: tell(
    '/api/rulebook/proposals',
    'Hand a revision in for a second person to approve',
    { body: shapes.ProposalRequest, answer: shapes.ProposalMade },
    { access: managers },
  ),
  proposalExamination: get(
    '/api/rulebook/examination',
    'What a proposal changes, and what it would say of sections on the line',
    shapes.ExaminationAnswer,
    { query: { proposal: { ...proposal, about: 'Proposal; left out: the latest revision itself' } } },
  ),
  approval: tell(
    '/api/rulebook/proposals/{proposal}/approval',
    'Approve what somebody else has drafted: it is issued',
    { body: shapes.ApprovalRequest, answer: shapes.ApprovalAnswer },
    { access: managers, signed: 'approved' },
  ),
  proposalReturn: tell(
    '/api/rulebook/proposals/{proposal}/return',
    'Send a proposal back, or take your own one back',
    { body: shapes.ProposalReturnRequest, answer: shapes.ProposalReturned },
    { access: managers },
  ),
  retroCheck: get(
    '/api/rulebook/retro-check',
    'What a revision would not have accepted of what is on record, line by line',
    shapes.RetroLine,
    {
      access: [...managers, 'inspector', 'agency-inspector', 'auditor'],
      media: 'application/x-ndjson',
      query: {
        revision,
        proposal,
        from: { required: false, about: 'First day, 2026-03-01', schema: Day },
        to: { required: false, about: 'Last day', schema: Day },
      },
    },
  ),
  revisionPreview: get(
    '/api/homes/{serial}/revision',
    'What another revision would change for a home on the line',
    shapes.RevisionApplicationAnswer,
    { query: { revision } },
  ),
  revisionApplication: tell(
    '/api/homes/{serial}/revision',
    'Judge a home on the line by another revision from now on',
    { body: shapes.RevisionApplicationRequest, answer: shapes.RevisionApplicationAnswer },
    { access: managers },
  ),
  orderPreview: tell(
    '/api/homes/{serial}/order-preview',
    'What another order would make due, undone or newly wrong for a home on the line',
    { body: shapes.OrderPreviewRequest, answer: shapes.RevisionApplicationAnswer },
    { access: managers, status: 200, keyed: false },
  ),
  buildPlan: get(
    '/api/sections/{serial}/build-plan',
    'What a section needs, station by station',
    BuildPlanAnswer,
  ),
} as const;
