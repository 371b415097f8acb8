import type { AnswerOf } from '@libs/contracts';
import type { Meta, ReadStream } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import { AGENCY_STREAM } from '@libs/record';
import type { AgencyCommand, AgencyFacts } from '@libs/record';
import { recordedAnswer } from './answers';
import { rolesOf } from './facts';
import { idsOf, rulebookAt } from './lots';
import type { Tellings, Told } from './told';
import { arrivalOf, askLedger, rejected, sealedNote, sealedText } from './telling';
import type { Arrival, When } from './telling';
import { tellUnit } from './unit-tellings';
import { unitKnowing, unitOf } from './units';
import type { Workings } from './workings';

/** One stream: there is one agency, and what it says outside sections is little. */
export const AGENCY_ID = 'agency';
const HERE = { kind: 'agency', serial: AGENCY_ID } as const;

export const tellVisit =
  (workings: Workings): Tellings['visit'] =>
  (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'visit', body, sender, params });
    const { day, stations, storage, equipment } = body;
    const visit = `${sender.key}-0`;
    const note = sealedNote(workings, arrival, HERE);
    return tellAgency(workings, arrival, {
      type: 'MakeVisit',
      data: { visit, day, stations, storage, equipment, ...note },
    });
  };

export const tellObservation =
  (workings: Workings): Tellings['observation'] =>
  (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'observation', body, sender, params });
    const { about, subject, rule, dueOn } = body;
    const note = sealedText(workings, arrival, { ref: HERE, field: 'note', text: body.note });
    const data = { observation: `${sender.key}-0`, about, subject, rule, dueOn, note };
    return tellAgency(workings, arrival, { type: 'MakeObservation', data });
  };

export const tellObservationAnswer =
  (workings: Workings): Tellings['observationAnswer'] =>
  (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'observationAnswer', body, sender, params });
    const note = sealedText(workings, arrival, { ref: HERE, field: 'note', text: body.note });
    const data = { observation: params['observation'] ?? '', note };
    return tellAgency(workings, arrival, { type: 'AnswerObservation', data });
  };

export const tellObservationClosing =
  (workings: Workings): Tellings['observationClosing'] =>
  (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'observationClosing', body, sender, params });
    const { accepted, dueOn } = body;
    const note = sealedNote(workings, arrival, HERE);
    const data = { observation: params['observation'] ?? '', accepted, dueOn, ...note };
    return tellAgency(workings, arrival, { type: 'CloseObservation', data });
  };

const tellAgency = async <B extends When & { readonly [field: string]: unknown }>(
  workings: Workings,
  arrival: Arrival<B>,
  command: AgencyCommand,
): Promise<Told<AnswerOf<'visit'>>> => {
  const facts = (read: ReadStream, meta: Meta): AgencyFacts => ({
    actor: meta.actor,
    roles: rolesOf(read, meta.actor, arrival.sender.roles ?? []),
    stations: idsOf(rulebookAt(workings.plans, read, meta)?.stations),
  });
  const outcome = await askLedger(workings, arrival, [
    partOf({ kind: AGENCY_STREAM, id: AGENCY_ID, command, facts }),
  ]);
  return outcome.ok
    ? { ok: true, answer: await recordedAnswer(workings, outcome) }
    : rejected(outcome.rejection, arrival.body);
};

export const tellStageSeen =
  (workings: Workings): Tellings['stageSeen'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'stageSeen', body, sender, params });
    const ref = await unitOf(workings, body.serial);
    const { station, visit } = body;
    const data = { serial: ref.serial, station, visit, ...sealedNote(workings, arrival, ref) };
    return tellUnit(workings, arrival, ref, { type: 'SeeStage', data });
  };

export const tellRedTag =
  (workings: Workings): Tellings['redTag'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'redTag', body, sender, params });
    const ref = await unitOf(workings, body.serial);
    const { tag, defect, rule } = body;
    const data = { serial: ref.serial, tag, defect, rule, ...sealedNote(workings, arrival, ref) };
    return tellUnit(workings, arrival, ref, { type: 'PlaceRedTag', data });
  };

export const tellRedTagLifting =
  (workings: Workings): Tellings['redTagLifting'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'redTagLifting', body, sender, params });
    const tag = params['tag'] ?? '';
    const ref = await unitKnowing(workings, body.serial, ({ redTags }) => redTags.includes(tag));
    const data = { serial: ref.serial, tag, ...sealedNote(workings, arrival, ref) };
    return tellUnit(workings, arrival, ref, { type: 'LiftRedTag', data });
  };
