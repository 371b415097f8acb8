import type { AnswerOf } from '@libs/contracts';
import type { Meta, ReadStream } from '@libs/kernel';
import { partOf, typeOf } from '@libs/ledger';
import type { AnyPart, Outcome } from '@libs/ledger';
import { LABEL, LABEL_SUPPLY, SECTION, isReceived } from '@libs/record';
import type { LabelCommand, LabelFacts, UnitCommand } from '@libs/record';
import { recordedAnswer, workAnswer } from './answers';
import { rolesOf } from './facts';
import type { UnitRef } from './wanted';
import type { Sender, Tellings, Told } from './told';
import { arrivalOf, arrived, askLedger, rejected, sealedNote, unitPart } from './telling';
import type { Arrival, When } from './telling';
import { sectionOf } from './units';
import type { Workings } from './workings';

export const SUPPLY_ID = 'label-supply';

/** People write the number with spaces or without; it is one number. */
const plain = (number: string): string => number.replaceAll(' ', '');

/** The number is used up and the section has its label, in one commit; or the section is not ready, and neither is so. */
export const tellLabel =
  (workings: Workings): Tellings['label'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'label', body, sender, params });
    const ref = await sectionOf(workings, body.serial);
    const { serial } = ref;
    const number = plain(body.number);
    const outcome = await askLedger(workings, arrival, [
      labellingPart(workings, arrival, ref, {
        type: 'AffixLabel',
        data: { serial, number, photos: body.photos },
      }),
      labelPart(sender, { type: 'UseLabel', data: { number, serial } }, { serial, replaces: null }),
    ]);
    return answered(workings, outcome, ref, body);
  };

/** The old number is taken off and the new one is used, in one commit. */
export const tellLabelReplacement =
  (workings: Workings): Tellings['labelReplacement'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'labelReplacement', body, sender, params });
    const ref = await sectionOf(workings, body.serial);
    const { serial } = ref;
    const number = plain(body.number);
    const old = (await workings.ledger.state(SECTION, serial)).label;
    const { reason, photos } = body;
    const note = sealedNote(workings, arrival, ref);
    const takenOff: LabelCommand | null =
      old === null ? null : { type: 'TakeOffLabel', data: { number: old, serial, replacedBy: number } };
    const outcome = await askLedger(workings, arrival, [
      labellingPart(workings, arrival, ref, {
        type: 'ReplaceLabel',
        data: { serial, number, reason, photos, ...note },
      }),
      labelPart(sender, { type: 'UseLabel', data: { number, serial } }, { serial, replaces: old }),
      ...(takenOff === null ? [] : [labelPart(sender, takenOff, { serial, replaces: null })]),
    ]);
    return answered(workings, outcome, ref, body);
  };

const labellingPart = (workings: Workings, arrival: Arrival, ref: UnitRef, command: UnitCommand): AnyPart =>
  unitPart(workings, ref, command, {
    ...arrived(arrival),
    forLabel: true,
    operations: (plan) => plan.order.filter((id) => plan.operations[id]?.label === true),
  });

const answered = async (
  workings: Workings,
  outcome: Outcome,
  ref: UnitRef,
  body: { readonly [field: string]: unknown },
): Promise<Told<AnswerOf<'label'>>> => {
  if (!outcome.ok) return rejected(outcome.rejection, body);

  const isRefused = outcome.events.some(({ schema }) => typeOf(schema) === 'LabelRefused');
  const answer = await workAnswer(workings, outcome, ref);
  return { ok: true, answer: { ...answer, answer: isRefused ? 'refused' : 'affixed' } };
};

type Wearing = { readonly serial: string; readonly replaces: string | null };

/** Stands after the section's own part, and so sees what the section has decided. */
const labelPart = (sender: Sender, command: LabelCommand, { serial, replaces }: Wearing): AnyPart =>
  partOf({
    kind: LABEL,
    id: command.data.number,
    command,
    facts: (read: ReadStream, meta: Meta): LabelFacts => ({
      actor: meta.actor,
      roles: rolesOf(read, meta.actor, sender.roles ?? []),
      isReceived: isReceived(read(LABEL_SUPPLY, SUPPLY_ID), command.data.number),
      wornBy: { serial, number: serial === '' ? null : read(SECTION, serial).label, replaces },
    }),
  });

export const tellLabelSupply =
  (workings: Workings): Tellings['labelSupply'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'labelSupply', body, sender, params });
    const data = { first: plain(body.first), last: plain(body.last) };
    const outcome = await askLedger(workings, arrival, [
      partOf({
        kind: LABEL_SUPPLY,
        id: SUPPLY_ID,
        command: { type: 'ReceiveLabels', data },
        facts: () => ({}),
      }),
    ]);
    return outcome.ok
      ? { ok: true, answer: await recordedAnswer(workings, outcome) }
      : rejected(outcome.rejection, body);
  };

const NOBODY: Wearing = { serial: '', replaces: null };

export const tellLabelVoid =
  (workings: Workings): Tellings['labelVoid'] =>
  (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'labelVoid', body, sender, params });
    const number = plain(params['number'] ?? '');
    const note = sealedNote(workings, arrival, { kind: 'label', serial: number });
    return tellOfLabel(workings, arrival, {
      type: 'VoidLabel',
      data: { number, reason: body.reason, ...note },
    });
  };

export const tellLabelReclaim =
  (workings: Workings): Tellings['labelReclaim'] =>
  (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'labelReclaim', body, sender, params });
    const number = plain(params['number'] ?? '');
    const note = sealedNote(workings, arrival, { kind: 'label', serial: number });
    return tellOfLabel(workings, arrival, { type: 'ReclaimLabel', data: { number, ...note } });
  };

const tellOfLabel = async <B extends When & { readonly [field: string]: unknown }>(
  workings: Workings,
  arrival: Arrival<B>,
  command: LabelCommand,
): Promise<Told<AnswerOf<'labelVoid'>>> => {
  const outcome = await askLedger(workings, arrival, [labelPart(arrival.sender, command, NOBODY)]);
  return outcome.ok
    ? { ok: true, answer: await recordedAnswer(workings, outcome) }
    : rejected(outcome.rejection, arrival.body);
};
