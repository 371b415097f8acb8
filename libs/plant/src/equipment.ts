import type { AnswerOf } from '@libs/contracts';
import type { Meta, ReadStream } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import type { AnyPart, Outcome } from '@libs/ledger';
import { INSTRUMENT, LOT, PERSON, SECTION, STATION } from '@libs/record';
import type { LotCommand, PersonCommand, StationFacts, UnitCommand } from '@libs/record';
import { recordedAnswer } from './answers';
import { idsOf, rulebookAt } from './lots';
import type { Tellings, Told } from './told';
import { eventsMentioning } from './questions';
import { sectionsWithLot } from './questions/reach';
import { arrivalOf, arrived, askLedger, rejected, sealedText, unitPart } from './telling';
import type { Arrival, When } from './telling';
import type { Workings } from './workings';

type EquipmentTelling =
  'quarantine' | 'lotRelease' | 'unmounting' | 'calibration' | 'qualification' | 'qualificationEnd';

export const equipmentTellings = (workings: Workings): Pick<Tellings, EquipmentTelling> => ({
  quarantine: tellQuarantine(workings),
  lotRelease: tellLotRelease(workings),
  unmounting: tellUnmounting(workings),
  calibration: tellCalibration(workings),
  qualification: tellQualification(workings),
  qualificationEnd: tellQualificationEnd(workings),
});

/**
 * First the lot, then the sections it is in: what is told in between is judged with the lot in quarantine already,
 * so that none is missed. Sent again after a crash in between, the sections are held then.
 */
const tellQuarantine =
  (workings: Workings): Tellings['quarantine'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'quarantine', body, sender, params });
    const lot = params['lot'] ?? '';
    const data = { lot, reason: body.reason, ...noteOf(workings, arrival, lot) };
    return overLot(workings, arrival, { type: 'QuarantineLot', data }, 'HoldForLot');
  };

const tellLotRelease =
  (workings: Workings): Tellings['lotRelease'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'lotRelease', body, sender, params });
    const lot = params['lot'] ?? '';
    const data = { lot, ...noteOf(workings, arrival, lot) };
    return overLot(workings, arrival, { type: 'ReleaseLot', data }, 'FreeFromLot');
  };

const noteOf = (
  workings: Workings,
  arrival: Arrival<When & { readonly note?: string | undefined }>,
  lot: string,
): { readonly note?: string } => {
  const { note: text } = arrival.body;
  const ref = { kind: 'lot', serial: lot } as const;
  return text === undefined ? {} : { note: sealedText(workings, arrival, { ref, field: 'note', text }) };
};

type OverLot = Extract<UnitCommand, { readonly type: 'HoldForLot' | 'FreeFromLot' }>['type'];

const overLot = async <B extends When & { readonly [field: string]: unknown }>(
  workings: Workings,
  arrival: Arrival<B>,
  command: Extract<LotCommand, { readonly type: 'QuarantineLot' | 'ReleaseLot' }>,
  type: OverLot,
): Promise<Told<AnswerOf<'quarantine'>>> => {
  const { lot } = command.data;
  const outcome = await askLedger(workings, arrival, [lotPart(workings, command)]);
  if (!outcome.ok) return rejected(outcome.rejection, arrival.body);

  const sections = await sectionsWithLot(
    { ledger: workings.ledger, mentioning: eventsMentioning(workings.reader) },
    lot,
  );
  const part = (serial: string): AnyPart =>
    unitPart(
      workings,
      { kind: 'section', serial },
      { type, data: { serial, lot } },
      { ...arrived(arrival), lots: [lot], part: `-${serial}` },
    );
  const held =
    sections.length === 0 ? null : await askLedger(workings, following(arrival), sections.map(part));
  if (held !== null && !held.ok) return rejected(held.rejection, arrival.body);
  return {
    ok: true,
    answer: { ...(await recordedAnswer(workings, held ?? outcome)), sections: [...namedIn(held)] },
  };
};

/** What follows from an asking has a key of its own, told from the first. */
const following = <B extends When>(arrival: Arrival<B>): Arrival<B> => ({
  ...arrival,
  sender: { ...arrival.sender, key: `${arrival.sender.key}-sections` },
});

const namedIn = (outcome: Outcome | null): ReadonlySet<string> =>
  new Set(
    outcome?.ok === true ? outcome.events.map(({ stream }) => stream.slice(`${SECTION.name}/`.length)) : [],
  );

const lotPart = ({ plans }: Workings, command: LotCommand): AnyPart =>
  partOf({
    kind: LOT,
    id: command.data.lot,
    command,
    facts: (read, meta) => ({ lotKinds: idsOf(rulebookAt(plans, read, meta)?.lotKinds) }),
  });

const tellUnmounting =
  (workings: Workings): Tellings['unmounting'] =>
  (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'unmounting', body, sender, params });
    const { station, lot } = body;
    return simply(workings, arrival, [
      partOf({
        kind: STATION,
        id: station,
        command: { type: 'UnmountLot', data: { station, lot } },
        facts: unmountingFacts,
      }),
    ]);
  };

/** What is taken off a station needs no leave: it is mounted there or it is not. */
const unmountingFacts = (_read: ReadStream, meta: Meta): StationFacts => ({
  stations: new Set(),
  lotKinds: new Set(),
  receivedAs: null,
  usable: true,
  reasons: new Set(),
  actor: meta.actor,
  roles: [],
});

const tellCalibration =
  (workings: Workings): Tellings['calibration'] =>
  (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'calibration', body, sender, params });
    const { instrument, kind, properties, dueOn, inTolerance } = body;
    return simply(workings, arrival, [
      partOf({
        kind: INSTRUMENT,
        id: instrument,
        command: { type: 'CalibrateInstrument', data: { instrument, kind, properties, dueOn, inTolerance } },
        facts: (read, meta) => ({
          instrumentKinds: idsOf(rulebookAt(workings.plans, read, meta)?.instrumentKinds),
        }),
      }),
    ]);
  };

const tellQualification =
  (workings: Workings): Tellings['qualification'] =>
  (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'qualification', body, sender, params });
    const { person, token, until } = body;
    return simply(workings, arrival, [personPart({ type: 'Qualify', data: { person, token, until } })]);
  };

const tellQualificationEnd =
  (workings: Workings): Tellings['qualificationEnd'] =>
  (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'qualificationEnd', body, sender, params });
    const { person, token } = body;
    return simply(workings, arrival, [personPart({ type: 'EndQualification', data: { person, token } })]);
  };

const personPart = (command: PersonCommand): AnyPart =>
  partOf({ kind: PERSON, id: command.data.person, command, facts: () => ({}) });

const simply = async <B extends When & { readonly [field: string]: unknown }>(
  workings: Workings,
  arrival: Arrival<B>,
  parts: readonly AnyPart[],
): Promise<Told<AnswerOf<'calibration'>>> => {
  const outcome = await askLedger(workings, arrival, parts);
  return outcome.ok
    ? { ok: true, answer: await recordedAnswer(workings, outcome) }
    : rejected(outcome.rejection, arrival.body);
};
