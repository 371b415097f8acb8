import type { AnswerOf } from '@libs/contracts';

export type SectionFacts = AnswerOf<'section'>;
export type Card = SectionFacts['operations'][number];
export type ValueAsked = Card['values'][number];
export type Station = AnswerOf<'plant'>['stations'][number];

export const isOpen = (card: Card): boolean => card.done === null || card.except.length > 0;
/** Part of the station's one sign-off; inspections and tests have signatures of their own. */
export const isSignedWithStation = (card: Card): boolean => card.entry === 'S' || card.entry === 'V';
/** One asks before one goes on. */
export const isAsked = (card: Card): boolean => card.cover || card.gate || card.label;
export const openToSignOff = (section: SectionFacts): readonly Card[] =>
  section.operations.filter((card) => isSignedWithStation(card) && isOpen(card));

export const nextStation = (stations: readonly Station[], from: string): Station | null => {
  const here = stations.find(({ id }) => id === from)?.pos ?? null;
  if (here === null) return null;
  const ahead = stations.filter(({ pos, kind }) => kind === 'line' && pos !== null && pos > here);
  return ahead.sort((one, other) => (one.pos ?? 0) - (other.pos ?? 0))[0] ?? null;
};

/** The one thing most likely wanted now; the bar at the thumb offers it. */
export type Next =
  | { readonly do: 'start' | 'return' | 'move-here' | 'sign-off' | 'ship' | 'nothing' }
  | { readonly do: 'ask' | 'record'; readonly card: Card }
  | { readonly do: 'move-on'; readonly to: Station };

const isDue = ({ mark }: Card): boolean => mark === 'due' || mark === 'open-at-places';

const nextOf = (card: Card, cleared: ReadonlySet<string>): Next | null => {
  const askedBefore = cleared.has(card.operation);
  if (isAsked(card) && isOpen(card) && card.mark !== 'held' && !askedBefore) return { do: 'ask', card };
  if (!isDue(card)) return null;
  return isSignedWithStation(card) && !card.cover ? { do: 'sign-off' } : { do: 'record', card };
};

/** What comes first of the open work here, in working order. A cover that still waits is asked for: the answer says why. */
const dueNext = (section: SectionFacts, cleared: ReadonlySet<string>): Next | null =>
  section.operations.reduce<Next | null>((next, card) => next ?? nextOf(card, cleared), null);

const onward = (section: SectionFacts, station: Station, stations: readonly Station[]): Next => {
  if (section.station !== station.id)
    return station.kind === 'line' ? { do: 'move-here' } : { do: 'nothing' };
  const to = nextStation(stations, station.id);
  if (to !== null) return { do: 'move-on', to };
  return station.kind === 'line' || station.kind === 'yard' ? { do: 'ship' } : { do: 'nothing' };
};

export const nextFor = (
  section: SectionFacts,
  station: Station,
  stations: readonly Station[],
  cleared: ReadonlySet<string>,
): Next => {
  if (section.stage === 'ordered') return station.kind === 'line' ? { do: 'start' } : { do: 'nothing' };
  if (section.stage === 'pulled') return station.kind === 'line' ? { do: 'return' } : { do: 'nothing' };
  return dueNext(section, cleared) ?? onward(section, station, stations);
};
