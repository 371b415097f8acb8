import type {
  AgencyRejection,
  ChartRejection,
  ClaimRejection,
  ContainmentRejection,
  DeliveryRejection,
  DeterminationRejection,
  InstrumentRejection,
  LabelRejection,
  LabelSupplyRejection,
  LotRejection,
  PersonRejection,
  RulebookRejection,
  StationRejection,
  UnitRejection,
} from '@libs/record';
import type { Trouble } from './problem';
import { Problem } from './problem';

export type Ruling = {
  readonly status: 403 | 404 | 409 | 422;
  readonly title: string;
  readonly field: string | null;
};

const unknown = (field: string, title: string): Ruling => ({ status: 404, title, field });
const conflict = (field: string | null, title: string): Ruling => ({ status: 409, title, field });
const wrong = (field: string, title: string): Ruling => ({ status: 422, title, field });
const forbidden = (title: string): Ruling => ({ status: 403, title, field: null });

type RejectionCode = (
  | AgencyRejection
  | ChartRejection
  | ClaimRejection
  | ContainmentRejection
  | DeliveryRejection
  | DeterminationRejection
  | InstrumentRejection
  | LabelRejection
  | LabelSupplyRejection
  | LotRejection
  | PersonRejection
  | RulebookRejection
  | StationRejection
  | UnitRejection
)['code'];

/** What each rejection is over HTTP. A code the record knows and this table does not is a compile error. */
export const RULINGS = {
  'happens-later': wrong('occurredAt', 'That time has not come yet; check the clock it was taken from'),
  'section-unknown': unknown('serial', 'No section or home of this plant has that serial'),
  'serial-already-ordered': conflict('serial', 'That serial is ordered already'),
  'section-already-started': conflict('serial', 'That section is on the line already'),
  'no-revision-in-force': conflict(null, 'No rulebook revision is in force yet'),
  'section-not-on-line': conflict('serial', 'That section is not on the line'),
  'section-not-pulled': conflict('serial', 'That section was not pulled off the line'),
  'station-unknown': wrong('station', 'The rulebook has no such station'),
  'operation-unknown': wrong('operation', 'The build plan of this section has no such operation'),
  'operation-not-of-station': wrong('operation', 'That operation belongs to another station'),
  'operation-signed-apart': wrong('operation', 'That operation has a signature of its own'),
  'operation-of-other-unit': wrong(
    'operation',
    'That operation belongs to the home or to a section, not to this',
  ),
  'place-unknown': wrong('except', 'The build plan has no such place here'),
  'characteristic-unknown': wrong('values', 'That operation has no such characteristic'),
  'characteristic-not-entered': wrong('values', 'That characteristic is not entered by hand'),
  'value-not-a-number': wrong('values', 'That value must be a decimal number, such as 36.5'),
  'value-not-a-count': wrong('values', 'That value must be a whole number, zero or more'),
  'value-below-zero': wrong('values', 'That value cannot be below zero'),
  'value-not-yes-or-no': wrong('values', 'That value must be yes or no'),
  'value-not-a-date': wrong('values', 'That value must be a date, such as 2026-03-14'),
  'value-of-excepted': wrong('values', 'That value is of an operation or a place that is excepted'),
  'unit-unknown': wrong('values', 'That is not a unit this plant measures in'),
  'unit-of-other-kind': wrong('values', 'That unit measures another kind of quantity'),
  'choice-unknown': wrong('values', 'That value is not one of the choices'),
  'lot-unknown': wrong('lots', 'No lot was received under that number'),
  'instrument-unknown': wrong('instrument', 'No instrument is known under that number'),
  'instrument-kind-unknown': wrong('kind', 'The rulebook has no such kind of instrument'),
  'instrument-of-other-kind': conflict('instrument', 'That instrument is of another kind'),
  'lot-kind-unknown': wrong('kind', 'The rulebook has no such kind of lot'),
  'lot-already-received': conflict('lot', 'That lot was received already'),
  'lot-of-other-kind': conflict('kind', 'That lot was received as another kind'),
  'lot-not-usable': conflict('lot', 'That lot is in quarantine or past its last day: it is not mounted'),
  'lot-not-mounted': conflict('lot', 'That lot is not mounted at this station'),
  'lot-not-quarantined': conflict('lot', 'That lot is not in quarantine'),
  'label-already-used': conflict('number', 'That label number is on another section'),
  'person-unknown': wrong('person', 'Nobody is enrolled under that id'),
  'work-not-recorded': conflict('operation', 'No work of that operation is on record'),
  'same-serial': wrong('belongsTo', 'That is the serial it is recorded on already'),
  'component-unknown': wrong('component', 'The rulebook has no such component'),
  'symptom-unknown': wrong('symptom', 'The rulebook has no such symptom'),
  'reason-unknown': wrong('reason', 'The rulebook has no such reason'),
  'defect-unknown': unknown('path/defect', 'That section has no such defect'),
  'defect-already-closed': conflict('path/defect', 'That defect is closed already'),
  'rework-not-done': conflict('path/defect', 'No rework is on record to verify'),
  'verified-by-own-hand': forbidden('Who did the rework may not verify it'),
  'disposition-needed': conflict(
    'path/defect',
    'That defect needs rework and verification, it cannot just be closed',
  ),
  'disposition-not-needed': conflict('path/defect', 'Only a nonconformance has a disposition'),
  'detail-needed': wrong('detail', 'A repair names the approved detail it is done to'),
  'approval-needed': wrong('approval', 'What is used as it is has a named approval'),
  'punch-list-empty': conflict('serial', 'No touch-up item of that section is open'),
  'cover-not-recorded': conflict('operation', 'That work is not on record, so nothing can be laid open'),
  'red-tag-on-already': conflict('tag', 'That red tag is on already'),
  'red-tag-unknown': unknown('path/tag', 'That section has no such red tag'),
  'red-tag-needs-agency': forbidden('Only the inspection agency lifts a red tag'),
  'label-on-already': conflict('serial', 'That section has its label'),
  'label-not-on': conflict('serial', 'That section has no label to replace'),
  'label-gone': conflict('number', 'That label is void, taken back or replaced'),
  'label-not-received': conflict('number', 'That label is not among those received'),
  'label-run-unfit': wrong(
    'last',
    'The run must have one series and end after it begins, at most 5000 labels',
  ),
  'labels-already-received': conflict('first', 'Some of those labels were received already'),
  'observation-unknown': unknown('path/observation', 'The agency noted nothing under that name'),
  'observation-closed-already': conflict('path/observation', 'That is closed already'),
  'observation-not-answered': conflict('path/observation', 'The plant has not answered yet'),
  'containment-empty': wrong('sections', 'Nothing to contain: no section is named'),
  'containment-unknown': unknown('path/containment', 'Nothing is contained under that name'),
  'section-not-contained': wrong('serial', 'That section is not among those contained'),
  'contained-clear-already': conflict('serial', 'That section was looked at already and is clear'),
  'hold-unknown': unknown('path/hold', 'That section has no such hold'),
  'hold-already-released': conflict('path/hold', 'That hold is released already'),
  'revision-not-in-force': conflict('revision', 'That revision is not in force yet'),
  'proposal-unknown': unknown('path/proposal', 'No revision waits for approval under that name'),
  'proposal-over': conflict('path/proposal', 'That proposal is issued already, or was sent back'),
  'proposal-outdated': conflict(
    'base',
    'Another revision was issued since: compare with it, and hand in anew',
  ),
  'approved-by-own-hand': forbidden('Who drafted a revision may not approve it: it takes a second person'),
  'agency-approval-needed': wrong(
    'agency',
    'It changes design or manual: the inspection agency’s approval is needed, its reference and date',
  ),
  'agency-approval-later': wrong(
    'agency/approvedOn',
    'The agency’s approval is dated after it would take effect',
  ),
  'effective-in-the-past': wrong('effectiveFrom', 'A revision changes nothing that was before it'),
  'nothing-changed': conflict('files', 'These files are those of the latest revision'),
  'baseline-backwards': wrong('to', 'The baseline ends before it begins'),
  'claim-logged-already': conflict('claim', 'A complaint is logged under that number already'),
  'claim-unknown': unknown('claim', 'No claim of that number is open'),
  'claim-triaged-already': conflict('claim', 'That complaint was decided on already'),
  'home-unknown': unknown('home', 'No home of this plant has that serial'),
  'section-not-of-home': wrong('section', 'That section belongs to another home'),
  'source-unknown': wrong('pointsTo', 'That is neither an operation nor a cause outside the line'),
  'determination-unknown': unknown('determination', 'There is no such determination file'),
  'determination-without-initial': conflict(null, 'The initial determination comes first'),
  'plan-not-submitted': conflict(null, 'No plan was submitted yet'),
  'home-not-in-class': wrong('home', 'That home is not in the class'),
  'not-allowed': forbidden('Your role may not decide this'),
} as const satisfies { readonly [code in RejectionCode]: Ruling };

type Rejection = { readonly code: string; readonly pointer?: string; readonly [field: string]: unknown };

const rulings: { readonly [code: string]: Ruling | undefined } = RULINGS;
/** A code this server was built without still is a no, and says itself what is the matter. */
const OTHER: Ruling = { status: 422, title: 'The record does not take this', field: null };

export const rejected = ({ code, pointer, ...fields }: Rejection): Problem => {
  const { status, title, field } = rulings[code] ?? OTHER;
  const given = Object.entries(fields).filter(
    ([, value]) => typeof value === 'string' || typeof value === 'number',
  );
  const detail = [title, ...given.map(([name, value]) => `${name} ${String(value)}`)].join('; ');

  return new Problem({ status, code, title, detail, errors: trouble(pointer, field, title), more: fields });
};

const trouble = (pointer: string | undefined, field: string | null, detail: string): readonly Trouble[] => {
  const place = pointer ?? (field === null ? undefined : `/${field}`);
  return place === undefined ? [] : [{ pointer: place.startsWith('#') ? place : `#${place}`, detail }];
};
