import type { Meta, ReadStream } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import { STATION } from '@libs/record';
import type { StationCommand, StationFacts } from '@libs/record';
import { recordedAnswer } from './answers';
import { rolesOf } from './facts';
import { idsOf, rulebookAt } from './lots';
import type { Plans } from './plans';
import type { Sender, Tellings, Told } from './told';
import { arrivalOf, askLedger, rejected, sealedText } from './telling';
import type { Arrival, When } from './telling';
import type { AnswerOf } from '@libs/contracts';
import type { Workings } from './workings';

export const tellStationHold =
  (workings: Workings): Tellings['stationHold'] =>
  (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'stationHold', body, sender, params });
    const { station, reason } = body;
    const data = { station, hold: `${sender.key}-0`, reason, ...noteOf(workings, arrival, station) };
    return tellStation(workings, arrival, { type: 'HoldStation', data });
  };

export const tellStationRelease =
  (workings: Workings): Tellings['stationRelease'] =>
  (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'stationRelease', body, sender, params });
    const { station } = body;
    const data = { station, hold: params['hold'] ?? '', ...noteOf(workings, arrival, station) };
    return tellStation(workings, arrival, { type: 'ReleaseStation', data });
  };

const noteOf = (
  workings: Workings,
  arrival: Arrival<When & { readonly note?: string | undefined }>,
  serial: string,
): { readonly note?: string } => {
  const { note: text } = arrival.body;
  return text === undefined
    ? {}
    : { note: sealedText(workings, arrival, { ref: { kind: 'station', serial }, field: 'note', text }) };
};

const tellStation = async <B extends When & { readonly [field: string]: unknown }>(
  workings: Workings,
  arrival: Arrival<B>,
  command: StationCommand,
): Promise<Told<AnswerOf<'stationHold'>>> => {
  const outcome = await askLedger(workings, arrival, [
    partOf({
      kind: STATION,
      id: command.data.station,
      command,
      facts: stationFacts(workings.plans, arrival.sender),
    }),
  ]);
  return outcome.ok
    ? { ok: true, answer: await recordedAnswer(workings, outcome) }
    : rejected(outcome.rejection, arrival.body);
};

const stationFacts =
  (plans: Plans, sender: Sender) =>
  (read: ReadStream, meta: Meta): StationFacts => {
    const rulebook = rulebookAt(plans, read, meta);
    return {
      stations: idsOf(rulebook?.stations),
      lotKinds: idsOf(rulebook?.lotKinds),
      receivedAs: null,
      usable: true,
      reasons: idsOf(rulebook?.reasons),
      actor: meta.actor,
      roles: rolesOf(read, meta.actor, sender.roles ?? []),
    };
  };
