import type { WordKey } from '../words/words';
import { places } from './places';
import type { Place } from './places';

export type ScreenEntry = {
  readonly screen: Place['screen'];
  readonly to: string;
  readonly title: WordKey;
  /** What one finds there, in a sentence. */
  readonly says: WordKey;
  /** Who comes for it: it stands first on their start screen and in their bar. Everyone else finds it further down. */
  readonly first: readonly string[];
  /** Who may open it at all, where not everyone may. */
  readonly only?: readonly string[];
};

const CLAIM_READERS = ['quality-manager', 'administrator', 'inspector', 'agency-inspector', 'auditor'];

/** Every screen that is reached by its name. Adding one is a line here, in places.ts and in app.tsx. */
export const SCREENS: readonly ScreenEntry[] = [
  {
    screen: 'line',
    to: places.line,
    title: 'nav.line',
    says: 'start.line',
    first: ['station-lead', 'quality-manager', 'inspector', 'administrator'],
  },
  {
    screen: 'quality',
    to: places.quality,
    title: 'nav.quality',
    says: 'start.quality',
    first: ['quality-manager'],
  },
  {
    screen: 'home',
    to: places.homes,
    title: 'nav.homes',
    says: 'start.homes',
    first: ['station-lead', 'quality-manager', 'inspector', 'agency-inspector', 'auditor', 'administrator'],
  },
  {
    screen: 'agency',
    to: places.agency,
    title: 'nav.agency',
    says: 'start.agency',
    first: ['agency-inspector'],
  },
  {
    screen: 'defects',
    to: places.defects,
    title: 'nav.defects',
    says: 'start.defects',
    first: ['quality-manager'],
  },
  {
    screen: 'holds',
    to: places.holds,
    title: 'nav.holds',
    says: 'start.holds',
    first: ['quality-manager', 'inspector', 'agency-inspector'],
  },
  {
    screen: 'claims',
    to: places.claims,
    title: 'nav.claims',
    says: 'start.claims',
    first: ['quality-manager'],
    only: CLAIM_READERS,
  },
  {
    screen: 'equipment',
    to: places.equipment,
    title: 'nav.equipment',
    says: 'start.equipment',
    first: [],
  },
  {
    screen: 'release',
    to: places.releases,
    title: 'nav.release',
    says: 'start.release',
    first: ['quality-manager', 'inspector', 'agency-inspector'],
  },
  {
    screen: 'containment',
    to: places.containment,
    title: 'nav.containment',
    says: 'start.containment',
    first: ['quality-manager'],
  },
  {
    screen: 'due',
    to: places.dueDays,
    title: 'nav.due',
    says: 'start.due',
    first: [],
    only: CLAIM_READERS,
  },
  {
    screen: 'audit',
    to: places.audit,
    title: 'nav.audit',
    says: 'start.audit',
    first: ['auditor'],
    only: ['auditor', 'quality-manager', 'agency-inspector', 'administrator'],
  },
  {
    screen: 'verify',
    to: places.verify,
    title: 'nav.verify',
    says: 'start.verify',
    first: ['auditor'],
  },
  {
    screen: 'site',
    to: places.site,
    title: 'nav.site',
    says: 'start.site',
    first: ['quality-manager'],
  },
  {
    screen: 'rulebook',
    to: places.rulebook,
    title: 'nav.rulebook',
    says: 'start.rulebook',
    first: ['administrator'],
  },
  {
    screen: 'people',
    to: places.people,
    title: 'nav.people',
    says: 'start.people',
    first: ['administrator'],
    only: ['administrator'],
  },
  {
    screen: 'own-access',
    to: places.ownAccess,
    title: 'nav.own-access',
    says: 'start.own-access',
    first: [],
  },
  {
    screen: 'feed',
    to: places.feed,
    title: 'nav.feed',
    says: 'start.feed',
    first: [],
    only: ['administrator', 'quality-manager'],
  },
];

const has = (wanted: readonly string[], roles: readonly string[]): boolean =>
  roles.some((role) => wanted.includes(role));

/** What these roles may open; what they come for first. */
export const screensFor = (roles: readonly string[]): readonly ScreenEntry[] => {
  const open = SCREENS.filter(({ only }) => only === undefined || has(only, roles));
  return [
    ...open.filter(({ first }) => has(first, roles)),
    ...open.filter(({ first }) => !has(first, roles)),
  ];
};

/** What stands in the bar at the top: what these roles come for, no more than one can take in. */
export const barFor = (roles: readonly string[]): readonly ScreenEntry[] =>
  screensFor(roles)
    .filter(({ first }) => has(first, roles))
    .slice(0, BAR);
const BAR = 6;
