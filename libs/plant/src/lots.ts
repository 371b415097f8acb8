import { floorDay } from '@libs/kernel';
import type { Meta, ReadStream } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import type { AnyPart } from '@libs/ledger';
import { LOT, RULEBOOK, STATION, inForceAt, isUsableLot } from '@libs/record';
import type { LotCommand, LotFacts, StationFacts } from '@libs/record';
import type { Rulebook } from '@libs/rulebook';
import { recordedAnswer } from './answers';
import type { Plans } from './plans';
import type { Tellings } from './told';
import { arrivalOf, askLedger, rejected } from './telling';
import type { Workings } from './workings';

export const tellLot =
  (workings: Workings): Tellings['lot'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'lot', body, sender, params });
    const { lot, kind, maker, properties, usableUntil } = body;
    const command = { type: 'ReceiveLot', data: { lot, kind, maker, properties, usableUntil } } as const;

    const outcome = await askLedger(workings, arrival, [lotPart(workings, command)]);
    return outcome.ok
      ? { ok: true, answer: await recordedAnswer(workings, outcome) }
      : rejected(outcome.rejection, body);
  };

/** A lot nobody received is on record with its mounting, as far as its label tells. */
export const tellMounting =
  (workings: Workings): Tellings['mounting'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'mounting', body, sender, params });
    const { station, lot, kind } = body;
    const asLabelled = { lot, kind, maker: null, properties: [], usableUntil: null };

    const outcome = await askLedger(workings, arrival, [
      lotPart(workings, { type: 'ReceiveLotUnlessKnown', data: asLabelled }),
      partOf({
        kind: STATION,
        id: station,
        command: { type: 'MountLot', data: { station, lot, kind } },
        facts: mountingFacts(workings.plans, lot),
      }),
    ]);
    return outcome.ok
      ? { ok: true, answer: await recordedAnswer(workings, outcome) }
      : rejected(outcome.rejection, body);
  };

const lotPart = ({ plans }: Workings, command: LotCommand): AnyPart =>
  partOf({
    kind: LOT,
    id: command.data.lot,
    command,
    facts: (read, meta): LotFacts => ({ lotKinds: idsOf(rulebookAt(plans, read, meta)?.lotKinds) }),
  });

const mountingFacts =
  (plans: Plans, id: string) =>
  (read: ReadStream, meta: Meta): StationFacts => {
    const rulebook = rulebookAt(plans, read, meta);
    const lot = read(LOT, id);
    return {
      stations: idsOf(rulebook?.stations),
      lotKinds: idsOf(rulebook?.lotKinds),
      receivedAs: lot.kind,
      usable: isUsableLot(lot, floorDay(meta.occurredAt)),
      reasons: idsOf(rulebook?.reasons),
      actor: meta.actor,
      roles: [],
    };
  };

export const rulebookAt = (plans: Plans, read: ReadStream, meta: Meta): Rulebook | undefined => {
  const issued = inForceAt(read(RULEBOOK, 'rulebook'), meta.occurredAt);
  if (issued === null) return undefined;

  plans.learn(issued);
  return plans.ofRevision(issued.revision)?.rulebook;
};

export const idsOf = (named: readonly { readonly id: string }[] = []): ReadonlySet<string> =>
  new Set(named.map(({ id }) => id));
