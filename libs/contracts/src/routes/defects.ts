import * as shapes from '../shapes';
import { tell } from './route';

const deciders = ['quality-manager', 'inspector', 'administrator'] as const;

/** Defects and holds, from found to released. */
export const defectsRoutes = {
  defect: tell('/api/defects', 'Record a defect', { body: shapes.DefectRequest, answer: shapes.WorkAnswer }),
  rework: tell('/api/defects/{defect}/rework', 'Tell that rework is done', {
    body: shapes.ReworkRequest,
    answer: shapes.WorkAnswer,
  }),
  verification: tell('/api/defects/{defect}/verification', 'Verify rework done by someone else', {
    body: shapes.VerificationRequest,
    answer: shapes.WorkAnswer,
  }),
  closing: tell('/api/defects/{defect}/closing', 'Close a punch item or a shortage', {
    body: shapes.ClosingRequest,
    answer: shapes.WorkAnswer,
  }),
  hold: tell('/api/holds', 'Hold a section', { body: shapes.HoldRequest, answer: shapes.WorkAnswer }),
  release: tell(
    '/api/holds/{hold}/release',
    'Release a hold',
    { body: shapes.ReleaseRequest, answer: shapes.WorkAnswer },
    { access: deciders },
  ),
} as const;
