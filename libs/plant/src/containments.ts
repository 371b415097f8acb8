import type { AnyPart } from '@libs/ledger';
import { partOf } from '@libs/ledger';
import { CLAIM, CONTAINED, CONTAINMENT, SECTION } from '@libs/record';
import type { ContainmentOpened, Unit } from '@libs/record';
import { recordedAnswer } from './answers';
import type { Tellings } from './told';
import { arrivalOf, arrived, askLedger, rejected, sealedText, unitPart } from './telling';
import type { Arrival, When } from './telling';
import type { Workings } from './workings';

type Contained = ContainmentOpened['data']['sections'][number];

/** One commit: the list, and a hold on each section of it where that is asked for. */
export const tellContainment =
  (workings: Workings): Tellings['containment'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'containment', body, sender, params });
    const containment = `${sender.key}-0`;
    const { serial, defect, operation, by, claim } = body;
    const from = claim === undefined ? {} : { claim };
    const sections = body.sections.map((section, index): Contained => ({
      ...section,
      hold: body.hold ? `${sender.key}-${index + 1}` : null,
    }));
    const note = noteIn(workings, arrival, containment);
    const outcome = await askLedger(workings, arrival, [
      partOf({
        kind: CONTAINMENT,
        id: containment,
        command: {
          type: 'OpenContainment',
          data: { containment, serial, defect, ...from, operation, by, sections, ...note },
        },
        facts: () => ({}),
      }),
      ...sections.flatMap((section) => holdPart(workings, arrival, section, { operation, containment })),
    ]);
    return outcome.ok
      ? { ok: true, answer: await recordedAnswer(workings, outcome) }
      : rejected(outcome.rejection, body);
  };

const noteIn = (
  workings: Workings,
  arrival: Arrival<When & { readonly note?: string | undefined }>,
  containment: string,
): { readonly note?: string } => {
  const { note: text } = arrival.body;
  const ref = { kind: 'containment', serial: containment };
  return text === undefined ? {} : { note: sealedText(workings, arrival, { ref, field: 'note', text }) };
};

const holdPart = (
  workings: Workings,
  arrival: Arrival,
  { serial, hold }: Contained,
  { operation, containment }: { readonly operation: string; readonly containment: string },
): readonly AnyPart[] =>
  hold === null
    ? []
    : [
        unitPart(
          workings,
          { kind: 'section', serial },
          { type: 'PlaceHold', data: { serial, hold, reason: CONTAINED, operation, containment } },
          arrived(arrival),
        ),
      ];

/** Nothing of the kind: its hold goes with the same word. The same again: a defect is opened, and the hold stays. */
export const tellContainedLook =
  (workings: Workings): Tellings['containedLook'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'containedLook', body, sender, params });
    const containment = params['containment'] ?? '';
    const { serial, found } = body;
    const unit = await workings.ledger.state(SECTION, serial);
    const { opened } = await workings.ledger.state(CONTAINMENT, containment);
    const what = found && opened !== null ? await foundAgain(workings, opened, `${sender.key}-0`) : null;
    const look = { containment, serial, found, defect: what?.defect ?? null };
    const outcome = await askLedger(workings, arrival, [
      partOf({
        kind: CONTAINMENT,
        id: containment,
        command: { type: 'InspectContained', data: { ...look, ...noteIn(workings, arrival, containment) } },
        facts: () => ({}),
      }),
      ...(found ? [] : releasePart(workings, arrival, unit, holdOn(opened, serial))),
      ...(what === null ? [] : [defectPart(workings, arrival, unit, what)]),
    ]);
    return outcome.ok
      ? { ok: true, answer: await recordedAnswer(workings, outcome) }
      : rejected(outcome.rejection, body);
  };

type Opened = Pick<ContainmentOpened['data'], 'serial' | 'defect' | 'claim' | 'operation' | 'sections'>;

const holdOn = (opened: Opened | null, serial: string): string | null =>
  opened?.sections.find((section) => section.serial === serial)?.hold ?? null;

/** Released by hand meanwhile, there is nothing left to release. */
const releasePart = (
  workings: Workings,
  arrival: Arrival,
  { serial, holds }: Unit,
  hold: string | null,
): readonly AnyPart[] =>
  hold === null || !holds.some((open) => open.hold === hold)
    ? []
    : [
        unitPart(
          workings,
          { kind: 'section', serial },
          { type: 'ReleaseHold', data: { serial, hold } },
          arrived(arrival),
        ),
      ];

type Found = {
  readonly defect: string;
  readonly component: string;
  readonly symptom: string;
  readonly operation: string;
};

/** What the claim shows, or what was found on the first section, is what was looked for on the others. */
const foundAgain = async (
  { views, ledger }: Workings,
  opened: Opened,
  defect: string,
): Promise<Found | null> => {
  const { serial, operation, claim } = opened;
  const claimed = claim === undefined ? null : (await ledger.state(CLAIM, claim)).opened;
  if (claimed !== null) return { defect, component: claimed.component, symptom: claimed.symptom, operation };

  const rows = await views.defects({ serial }, { from: '0000-00-00', to: '9999-99-99' }, DEFECTS_OF_UNIT);
  const first = rows.find((row) => row.defect === opened.defect);
  return first === undefined
    ? null
    : { defect, component: first.component, symptom: first.symptom, operation };
};

const DEFECTS_OF_UNIT = 500;

const defectPart = (workings: Workings, arrival: Arrival, unit: Unit, { defect, ...cause }: Found): AnyPart =>
  unitPart(
    workings,
    { kind: 'section', serial: unit.serial },
    {
      type: 'RecordDefect',
      data: {
        serial: unit.serial,
        defect,
        class: 'nonconformance',
        ...cause,
        place: null,
        foundAt: unit.station,
        photos: [],
        quantity: 1,
        hold: false,
      },
    },
    arrived(arrival),
  );
