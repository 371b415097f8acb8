import { tell } from './flow';
import type { Flow } from './flow';
import type { HomeOrder } from './models';
import type { Chance } from './random';
import type { Fault } from './story';
import { telling } from './telling';
import type { Telling } from './telling';
import { later } from './world';
import type { World } from './world';

/** What an owner noticed, and when the office heard of it. */
export type Noticed = {
  readonly claim: string;
  readonly section: string;
  readonly fault: Fault;
  readonly atMs: number;
};

const DAY_MS = 86_400_000;
const HAULERS = ['Long Way Haul (invented)', 'Two Axle Haul (invented)', 'Blue Ramp Haul (invented)'];
const INSTALLERS = ['Level Set (invented)', 'Pier and Strap (invented)', 'Home Setters (invented)'];
const RETAILERS = ['Oak Lot Homes (invented)', 'River Lot Homes (invented)', 'Hill Lot Homes (invented)'];

type Part = { readonly home: HomeOrder };

/** Who hauled, set and sold it: told once somebody lives there. */
export function* handedOver(world: World, { home }: Part, movedInMs: number, chance: Chance): Flow {
  if (movedInMs >= world.endMs) return;
  const retailer = chance.pick(RETAILERS);
  yield* tell(
    telling(
      'delivery',
      {
        home: home.home,
        retailer,
        hauler: chance.pick(HAULERS),
        installer: chance.pick(INSTALLERS),
        setOn: world.clock.day(movedInMs - DAY_MS * 8),
        occupiedOn: world.clock.day(movedInMs),
        occurredAt: world.clock.instant(movedInMs),
        device: 'office-2',
      },
      { actor: world.staff.qualityManager, atMs: movedInMs },
    ),
  );
}

/** Charged to its operation at once, as the plant's own people read it. */
export const defectTold = (world: World, { section, fault, atMs }: Noticed, chance: Chance): Telling =>
  telling(
    'defect',
    {
      serial: section,
      component: fault.component,
      symptom: fault.symptom,
      operation: fault.operation,
      foundAt: null,
      photos: chance.yes(0.4) ? [chance.hex(64)] : [],
      occurredAt: world.clock.instant(atMs),
      device: 'office-2',
    },
    { actor: world.staff.qualityManager, atMs },
  );

/**
 * The complaint itself, what a technician saw on opening it up (not every claim is opened, nor seen right), and what was
 * decided. Of a home's several claims one is decided while another comes in: whoever tells them sorts them by time.
 */
export const complained = (
  world: World,
  { home }: Part,
  noticed: Noticed,
  chance: Chance,
): readonly Telling[] => {
  const { claim, section, fault, atMs } = noticed;
  const { component, symptom } = fault;
  const actor = world.staff.qualityManager;
  const noticedOn = world.clock.day(atMs - DAY_MS * chance.between(1, 9));
  const complaint = telling(
    'complaint',
    {
      claim,
      receivedOn: world.clock.day(atMs),
      source: chance.yes(0.6) ? 'owner' : 'retailer',
      home: home.home,
      opened: { section, component, symptom, noticedOn },
      occurredAt: world.clock.instant(atMs),
      device: 'office-2',
    },
    { actor, atMs },
  );
  return [complaint, ...openedUp(world, noticed, chance), ...decided(world, noticed, chance)];
};

const openedUp = (world: World, { claim, fault, atMs }: Noticed, chance: Chance): readonly Telling[] => {
  const seenMs = later(world, atMs + DAY_MS * chance.between(4, 15), 60);
  if (seenMs >= world.endMs || !chance.yes(0.5)) return [];
  const pointsTo = [chance.yes(0.85) ? fault.operation : 'x-use'];
  const when = { occurredAt: world.clock.instant(seenMs), device: 'office-2' };
  const actor = world.staff.qualityManager;
  return [telling('asFound', { pointsTo, ...when }, { actor, atMs: seenMs, params: { claim } })];
};

const BASES = {
  noncompliance: 'Mended at the home. Records of like homes were read: this one alone.',
  'no-action': 'Opened and looked at: nothing departs from the approved design.',
} as const;

/** Within the thirty days as a rule, now and then late; a few still wait for somebody. */
const decided = (world: World, { claim, atMs }: Noticed, chance: Chance): readonly Telling[] => {
  const days = chance.yes(0.94) ? chance.between(16, 29) : chance.between(31, 44);
  const decidedMs = later(world, atMs + DAY_MS * days, 60);
  if (decidedMs >= world.endMs || chance.yes(0.03)) return [];
  const severity = chance.yes(0.7) ? 'noncompliance' : 'no-action';
  return [
    telling(
      'claimDecision',
      {
        severity,
        decidedOn: world.clock.day(decidedMs),
        bases: BASES[severity],
        occurredAt: world.clock.instant(decidedMs),
        device: 'office-2',
      },
      { actor: world.staff.qualityManager, atMs: decidedMs, params: { claim } },
    ),
  ];
};
