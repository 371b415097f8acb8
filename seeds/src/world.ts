import type { FloorClock } from './floor-clock';
import type { Staff } from './people';
import type { Chance } from './random';
import type { Fault, Story } from './story';

/** What everyone in the story knows. Nothing here changes while it is told. */
export type World = {
  readonly clock: FloorClock;
  readonly days: readonly string[];
  readonly startMs: number;
  readonly endMs: number;
  readonly staff: Staff;
  readonly story: Story;
  readonly faults: ReadonlyMap<string, readonly Fault[]>;
  /** Line stations in order, the yard last. */
  readonly stations: readonly string[];
  /** Shops that feed a line station, worked while the section stands at the station named. */
  readonly shops: ReadonlyMap<string, readonly string[]>;
  readonly instruments: ReadonlyMap<string, string>;
  /** How many are used up, and how many the agency has given out. */
  readonly labels: { next: number; received: number };
  /** Containments begun, and red tags given out. */
  readonly contained: { count: number; tags: number };
  /** Lots mounted now, by station and kind, and those the story knows to be bad. */
  readonly mounted: Map<string, string>;
  readonly badLots: Set<string>;
  readonly trimmedWithBadLot: Set<string>;
  /** Sections on their way, for whoever scans the other half. */
  readonly underway: Map<string, OtherHalf>;
};

/** What somebody who scans the wrong half brings about on it. */
export type OtherHalf = {
  readonly mayTakeUp: (operation: string) => boolean;
  readonly hasDone: (operation: string) => boolean;
  readonly forget: (operation: string) => void;
};

const MINUTE_MS = 60_000;
const SHIFT_FROM = 360;
const SHIFT_TO = 950;

export const yearGone = ({ startMs, endMs }: World, atMs: number): number =>
  Math.min(1, Math.max(0, (atMs - startMs) / (endMs - startMs)));

/** So many working minutes later: what does not fit before the end of shift goes on the next working morning. */
export const later = ({ clock, days }: World, atMs: number, minutes: number): number => {
  const ms = atMs + minutes * MINUTE_MS;
  const day = clock.day(ms);
  if (ms <= clock.at(day, SHIFT_TO) && ms >= clock.at(day, SHIFT_FROM) && days.includes(day)) return ms;

  const today = clock.day(atMs);
  const next = days.find((one) => one > today);
  return next === undefined ? ms : clock.at(next, SHIFT_FROM + 5 + (minutes % 40));
};

/** Someone of the crew; one shift in twelve, somebody who stands in from another crew. */
export const someoneOf = (
  { staff }: World,
  crew: string,
  chance: Chance,
): { actor: string; crew: string } => {
  const own = staff.crew(crew);
  if (crew === 'quality') return { actor: chance.pick(staff.inspectors), crew };
  if (crew === 'installer') return { actor: chance.pick(own), crew };
  if (own.length > 0 && !chance.yes(0.08)) return { actor: chance.pick(own), crew };

  const others = staff.all.filter(
    (person) => person.roles.includes('station-lead') && person.crew !== 'installer',
  );
  const stand = chance.pick(others);
  return { actor: stand.person, crew: stand.crew ?? crew };
};

/** An inspector who is not the one named. */
export const anotherInspector = ({ staff }: World, not: string, chance: Chance): string =>
  chance.pick(staff.inspectors.filter((one) => one !== not));
