import type { AnswerOf } from '@libs/contracts';
import { OUTSIDE_CAUSES, causeSays, sourceSaysOf } from '@libs/contracts';
import { CLAIM, DELIVERY, DETERMINATION } from '@libs/record';
import type { Claim, Delivery } from '@libs/record';
import type { Asked } from '../questions/asked';
import { daysIn, dueOf } from './counting';
import type { Days } from './counting';

type ClaimAnswer = AnswerOf<'claim'>;

const idsIn = async (asked: Asked, kind: string): Promise<readonly string[]> =>
  (await asked.streamsOf(kind)).map((stream) => stream.slice(kind.length + 1));

export const determinationsIn = (asked: Asked): Promise<readonly string[]> =>
  idsIn(asked, DETERMINATION.name);

export const claimsQuestion = (asked: Asked) => async (): Promise<AnswerOf<'claims'>> => {
  const days = await daysIn(asked);
  const claims: ClaimAnswer[] = [];
  for (const id of await idsIn(asked, CLAIM.name)) {
    const claim = await answerOf(asked, id, days);
    if (claim !== undefined) claims.push(claim);
  }
  const names = asked.names.current();
  const operations = (asked.plans.current()?.rulebook.operations ?? []).map(({ id }) => id);
  return {
    claims: claims.sort((one, other) => (one.receivedOn < other.receivedOn ? 1 : -1)),
    sources: [...OUTSIDE_CAUSES, ...operations].map((id) => ({ id, name: sourceSaysOf(id, names) })),
  };
};

export const claimQuestion =
  (asked: Asked) =>
  async (id: string): Promise<ClaimAnswer | undefined> =>
    answerOf(asked, id, await daysIn(asked));

const answerOf = async (asked: Asked, id: string, days: Days): Promise<ClaimAnswer | undefined> => {
  const claim = await asked.ledger.state(CLAIM, id);
  const { logged, opened, dismissed } = claim;
  if (logged === null) return undefined;
  const home = opened?.home ?? logged.home;
  const delivery = home === null ? null : await asked.ledger.state(DELIVERY, home);
  const unsealed = (field: string, text: string | null | undefined): string | null =>
    text == null ? null : asked.unsealed(text, { stream: `${CLAIM.name}/${id}`, field });
  return {
    claim: id,
    receivedOn: logged.receivedOn,
    source: logged.source,
    home,
    ...whatFailed(claim, asked),
    words: unsealed('words', logged.words),
    because: unsealed('because', dismissed),
    photos: [...logged.photos],
    asFound: asFoundOf(claim, asked, unsealed('note', claim.asFound?.note)),
    delivery: deliveryOf(delivery),
    determinations: (days.files.get(id) ?? []).map(({ determination }) => determination),
    due: dueOf(id, claim, days),
    determined: determinedOf(claim, asked, unsealed('bases', claim.determined?.bases)),
    confirmed: confirmedOf(claim, asked),
  };
};

const determinedOf = (
  { determined }: Claim,
  { names }: Asked,
  bases: string | null,
): ClaimAnswer['determined'] => {
  if (determined === null) return null;
  const { severity, decidedOn, by } = determined;
  return { severity, decidedOn, bases, by: names.person(by) };
};

const confirmedOf = ({ confirmed }: Claim, { names, plans }: Asked): ClaimAnswer['confirmed'] => {
  if (confirmed === null) return null;
  const { cause, operation, outside, factor, value, by, at } = confirmed;
  const known = plans.current()?.rulebook.operations.find(({ id }) => id === operation);
  const station = known?.station ?? null;
  const says = causeSays({ operation, outside, factor, value, station }, names.current());
  return { cause, says, operation, by: names.person(by), at };
};

type WhatFailed = Pick<
  ClaimAnswer,
  'standing' | 'section' | 'component' | 'symptom' | 'says' | 'place' | 'noticedOn'
>;

const whatFailed = ({ opened, dismissed }: Claim, { names }: Asked): WhatFailed => {
  if (opened === null) {
    const nothing = { section: null, component: null, symptom: null, place: null, noticedOn: null };
    return dismissed === null
      ? { ...nothing, standing: 'new', says: { en: 'Not looked at yet', es: 'Aún sin revisar' } }
      : { ...nothing, standing: 'no-failure', says: { en: 'No failure', es: 'No hay falla' } };
  }
  const { section, component, symptom, place, noticedOn } = opened;
  const [part, shows] = [names.current().component(component), names.current().symptom(symptom)];
  const says = { en: `${part.en}: ${shows.en}`, es: `${part.es}: ${shows.es}` };
  return { standing: 'claim', section, component, symptom, says, place, noticedOn };
};

const asFoundOf = (
  { asFound }: Claim,
  { names }: Asked,
  note: string | null,
): NonNullable<ClaimAnswer['asFound']> | null => {
  const named = (ids: readonly string[]): { id: string; name: { en: string; es: string } }[] =>
    ids.map((id) => ({ id, name: sourceSaysOf(id, names.current()) }));
  return asFound === null
    ? null
    : { pointsTo: named(asFound.pointsTo), speaksAgainst: named(asFound.speaksAgainst), note };
};

const deliveryOf = (delivery: Delivery): ClaimAnswer['delivery'] => {
  if (delivery === null) return null;
  const { home: _home, address, ...rest } = delivery;
  return { ...rest, addressKnown: address !== undefined };
};
