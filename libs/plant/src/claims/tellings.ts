import type { AnswerOf, BodyOf } from '@libs/contracts';
import { OUTSIDE_CAUSES } from '@libs/contracts';
import type { Meta, ReadStream } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import type { AnyPart } from '@libs/ledger';
import { CLAIM, DELIVERY, HOME } from '@libs/record';
import type { ClaimCommand, ClaimFacts } from '@libs/record';
import { recordedAnswer } from '../answers';
import { idsOf, rulebookAt } from '../lots';
import { arrivalOf, askLedger, rejected, sealedText } from '../telling';
import type { Arrival, When } from '../telling';
import type { Told, Tellings } from '../told';
import type { Workings } from '../workings';

type ClaimTelling = 'complaint' | 'dismissal' | 'claimOpening' | 'asFound' | 'claimDecision' | 'delivery';
type Deciding = Exclude<ClaimTelling, 'complaint' | 'delivery'>;
type ClaimTold = Promise<Told<AnswerOf<'complaint'>>>;

export const claimTellings = (workings: Workings): Pick<Tellings, ClaimTelling> => ({
  complaint: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'complaint', body, sender, params });
    const claim = body.claim ?? `${sender.key}-0`;
    const parts = [
      claimPart(workings, claim, logCommand(workings, arrival, claim), body.home),
      ...(body.delivery === undefined || body.home === null
        ? []
        : [deliveryPart(workings, arrival, { home: body.home, ...body.delivery })]),
    ];
    return claimTold(workings, arrival, claim, parts);
  },
  ...deciding(workings),
  delivery: async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'delivery', body, sender, params });
    const part = deliveryPart(workings, arrival, body);
    const outcome = await askLedger(workings, arrival, [part]);
    return outcome.ok
      ? { ok: true, answer: await recordedAnswer(workings, outcome) }
      : rejected(outcome.rejection, body);
  },
});

const deciding = (workings: Workings): Pick<Tellings, Deciding> => ({
  claimDecision: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'claimDecision', body, sender, params });
    const claim = params['claim'] ?? '';
    const { severity, decidedOn } = body;
    const bases = sealed(workings, arrival, { claim, field: 'bases', text: body.bases });
    const command = { type: 'DetermineClaim', data: { claim, severity, decidedOn, bases } } as const;
    return claimTold(workings, arrival, claim, [claimPart(workings, claim, command, null)]);
  },
  dismissal: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'dismissal', body, sender, params });
    const claim = params['claim'] ?? '';
    const because = sealed(workings, arrival, { claim, field: 'because', text: body.because });
    const command = { type: 'DismissComplaint', data: { claim, because } } as const;
    return claimTold(workings, arrival, claim, [claimPart(workings, claim, command, null)]);
  },
  claimOpening: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'claimOpening', body, sender, params });
    const claim = params['claim'] ?? '';
    const { home, section, component, symptom, place, noticedOn } = body;
    const data = { claim, home, section, component, symptom, place, noticedOn };
    return claimTold(workings, arrival, claim, [
      claimPart(workings, claim, { type: 'OpenClaim', data }, home),
    ]);
  },
  asFound: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'asFound', body, sender, params });
    const claim = params['claim'] ?? '';
    const { pointsTo, speaksAgainst, photos } = body;
    const note =
      body.note === undefined
        ? {}
        : { note: sealed(workings, arrival, { claim, field: 'note', text: body.note }) };
    const command = {
      type: 'ReportAsFound',
      data: { claim, pointsTo, speaksAgainst, photos, ...note },
    } as const;
    return claimTold(workings, arrival, claim, [claimPart(workings, claim, command, null)]);
  },
});

export const sealed = (
  workings: Workings,
  arrival: Arrival,
  { claim, field, text }: { readonly claim: string; readonly field: string; readonly text: string },
): string => sealedText(workings, arrival, { ref: { kind: CLAIM.name, serial: claim }, field, text });

const logCommand = (
  workings: Workings,
  arrival: Arrival<BodyOf<'complaint'>>,
  claim: string,
): ClaimCommand => {
  const { receivedOn, source, home, words, photos, opened, noFailureBecause } = arrival.body;
  const said =
    words === undefined ? {} : { words: sealed(workings, arrival, { claim, field: 'words', text: words }) };
  return {
    type: 'LogComplaint',
    data: {
      logged: { claim, receivedOn, source, home, photos, ...said },
      dismissed:
        noFailureBecause === undefined
          ? null
          : {
              claim,
              because: sealed(workings, arrival, { claim, field: 'because', text: noFailureBecause }),
            },
      opened: opened === undefined || home === null ? null : { claim, home, ...opened },
    },
  };
};

export const claimPart = (
  { plans }: Workings,
  claim: string,
  command: ClaimCommand,
  home: string | null,
): AnyPart =>
  partOf({
    kind: CLAIM,
    id: claim,
    command,
    facts: (read: ReadStream, meta: Meta): ClaimFacts => {
      const rulebook = rulebookAt(plans, read, meta);
      const unit = home === null ? null : read(HOME, home);
      const operations = (rulebook?.operations ?? []).map(({ id }) => id);
      return {
        sections: unit?.kind === 'home' ? unit.sections : null,
        components: idsOf(rulebook?.components),
        symptoms: idsOf(rulebook?.symptoms),
        sources: new Set(operations.length === 0 ? [] : [...operations, ...OUTSIDE_CAUSES]),
      };
    },
  });

type Delivered = Pick<
  BodyOf<'delivery'>,
  'home' | 'retailer' | 'hauler' | 'installer' | 'setOn' | 'occupiedOn' | 'address'
>;

const deliveryPart = (workings: Workings, arrival: Arrival, delivered: Delivered): AnyPart => {
  const { home, retailer, hauler, installer, setOn, occupiedOn, address: text } = delivered;
  const ref = { kind: DELIVERY.name, serial: home };
  const address =
    text === undefined ? {} : { address: sealedText(workings, arrival, { ref, field: 'address', text }) };
  const data = { home, retailer, hauler, installer, setOn, occupiedOn, ...address };
  return partOf({
    kind: DELIVERY,
    id: home,
    command: { type: 'RecordDelivery', data },
    facts: (read: ReadStream) => ({ homeKnown: read(HOME, home).kind === 'home' }),
  });
};

export const claimTold = async <B extends When & { readonly [field: string]: unknown }>(
  workings: Workings,
  arrival: Arrival<B>,
  claim: string,
  parts: readonly AnyPart[],
): ClaimTold => {
  const outcome = await askLedger(workings, arrival, parts);
  return outcome.ok
    ? { ok: true, answer: { ...(await recordedAnswer(workings, outcome)), claim } }
    : rejected(outcome.rejection, arrival.body);
};
