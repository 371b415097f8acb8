import * as more from '../defect-shapes';
import * as shapes from '../shapes';
import { TELLERS, get, tell } from './route';

const deciders = ['quality-manager', 'inspector', 'administrator'] as const;
const managers = ['quality-manager', 'administrator'] as const;
/** The inspection agency records what it found like anybody else. */
const tellersAndAgency = [...TELLERS, 'agency-inspector'] as const;
const answer = shapes.WorkAnswer;

/** What differs from the design and stays: somebody answers for it by name. */
const isUseAsIs = (body: unknown): boolean =>
  typeof body === 'object' && body !== null && Reflect.get(body, 'disposition') === 'use-as-is';

/** Defects and holds, from found to released. */
export const defectsRoutes = {
  defect: tell(
    '/api/defects',
    'Record a defect',
    { body: shapes.DefectRequest, answer },
    { access: tellersAndAgency },
  ),
  openDefects: get('/api/defects/open', 'Defects that are open, the oldest first', more.OpenDefectsAnswer, {
    query: { class: { required: false, about: 'nonconformance, punch, shortage, record; left out: all' } },
  }),
  cause: tell(
    '/api/defects/{defect}/cause',
    'Name another cause',
    { body: more.CauseRequest, answer },
    { access: managers },
  ),
  disposition: tell(
    '/api/defects/{defect}/disposition',
    'Decide what becomes of a nonconformance',
    { body: more.DispositionRequest, answer },
    { access: managers, signed: 'approved', signedWhen: isUseAsIs },
  ),
  rework: tell('/api/defects/{defect}/rework', 'Tell that rework is done', {
    body: shapes.ReworkRequest,
    answer,
  }),
  verification: tell(
    '/api/defects/{defect}/verification',
    'Verify rework done by someone else',
    { body: shapes.VerificationRequest, answer },
    { access: tellersAndAgency },
  ),
  closing: tell('/api/defects/{defect}/closing', 'Close a punch item or a shortage', {
    body: shapes.ClosingRequest,
    answer,
  }),
  punchList: tell('/api/punch-lists', 'Record a list of touch-up items', {
    body: more.PunchListRequest,
    answer,
  }),
  punchSignature: tell('/api/punch-lists/signature', 'Sign a touch-up list off as one', {
    body: more.PunchSignatureRequest,
    answer,
  }),
  coverOpening: tell('/api/cover-openings', 'Tell that covered work was laid open', {
    body: more.CoverOpeningRequest,
    answer,
  }),
  holds: get('/api/holds', 'Everything that is held, the oldest first', more.HoldsAnswer),
  hold: tell(
    '/api/holds',
    'Hold a section',
    { body: shapes.HoldRequest, answer },
    { access: tellersAndAgency },
  ),
  release: tell(
    '/api/holds/{hold}/release',
    'Release a hold',
    { body: shapes.ReleaseRequest, answer },
    { access: deciders },
  ),
  stationHold: tell('/api/station-holds', 'Hold a station', {
    body: more.StationHoldRequest,
    answer: shapes.Recorded,
  }),
  stationRelease: tell(
    '/api/station-holds/{hold}/release',
    'Release a station',
    { body: more.StationReleaseRequest, answer: shapes.Recorded },
    { access: deciders },
  ),
} as const;
