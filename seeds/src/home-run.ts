import { look, tell, waitUntil } from './flow';
import type { Flow } from './flow';
import type { HomeOrder } from './models';
import type { Chance } from './random';
import type { Hidden, Section } from './section-state';
import { workAt } from './station-work';
import type { Fault } from './story';
import { telling } from './telling';
import { complained, defectTold, handedOver } from './owners';
import type { Noticed } from './owners';
import { later } from './world';
import type { World } from './world';

export type HomePart = {
  readonly home: HomeOrder;
  readonly orderMs: number;
  /** When the last section left for the site; null: not within the story. */
  readonly shippedMs: number | null;
  /** Filled by the sections' own flows: what nobody noticed in the plant. */
  readonly escaped: Hidden[];
};

const DAY_MS = 86_400_000;

function* order(world: World, { home, orderMs }: HomePart): Flow {
  yield* tell(
    telling(
      'home',
      {
        home: home.home,
        model: home.model,
        design: { ...home.design },
        sections: home.sections.map(({ serial, design }) => ({ serial, design: { ...design } })),
        destination: home.destination,
        occurredAt: world.clock.instant(orderMs),
        device: 'office-1',
      },
      { actor: world.staff.qualityManager, atMs: orderMs },
    ),
  );
}

/** A home from its order to the people who live in it; the line's part is its sections' own. */
export function* runHome(world: World, part: HomePart, chance: Chance): Flow {
  yield* order(world, part);
  yield* runSite(world, part, chance);
}

/** At the site: set, joined, tested and finished by the installer, then lived in. */
function* runSite(world: World, part: HomePart, chance: Chance): Flow {
  if (part.shippedMs === null) return;
  const { home } = part;
  yield* waitUntil(part.shippedMs + DAY_MS / 2);
  const cards = yield* look(home.home, `home ${JSON.stringify(home.design)}`);
  const site: Section = {
    world,
    chance,
    home: { ...home, sections: [] },
    serial: home.home,
    wet: false,
    cards: new Map(cards.filter(({ station }) => station === 'site').map((card) => [card.operation, card])),
    done: new Set(),
    unsent: [],
    defects: [],
    recordHolds: [],
    hidden: [],
    shortages: [],
    leftOpen: new Set(),
    vouched: new Set(),
    agency: chance.branch('agency'),
    seenAt: null,
    redTags: [],
    at: 'site',
    now: later(world, part.shippedMs + DAY_MS * chance.between(1, 6), 30),
  };
  yield* workAt(site, 'site', [...site.cards.values()]);
  yield* livedIn(world, part, site, chance);
}

/** Days from set to moving in, and then the claims: half of them in the first two months. */
function* livedIn(world: World, part: HomePart, site: Section, chance: Chance): Flow {
  const movedIn = site.now + DAY_MS * (10 + chance.between(0, 30) + chance.between(0, 60));
  const claims = claimsOf(world, part, chance)
    .map((fault) => ({
      fault,
      atMs: later(world, movedIn + DAY_MS * chance.between(2, chance.yes(0.5) ? 60 : 240), 90),
    }))
    .filter(({ atMs }) => atMs < world.endMs)
    .sort((one, other) => one.atMs - other.atMs);

  yield* handedOver(world, part, movedIn, chance.branch('delivery'));
  const tellings = claims.flatMap(({ fault, atMs }, index) => {
    const section = chance.pick(part.home.sections).serial;
    const noticed: Noticed = { claim: `C-${part.home.home}-${index + 1}`, section, fault, atMs };
    return [
      defectTold(world, noticed, chance),
      ...complained(world, part, noticed, chance.branch(noticed.claim)),
    ];
  });
  for (const one of tellings.sort((a, b) => a.atMs - b.atMs)) yield* tell(one);
}

/** What shows at the owner's: faults that escaped the plant, the bad lot, and what setting and hauling did. */
const claimsOf = (world: World, { home, escaped }: HomePart, chance: Chance): readonly Fault[] => [
  ...escaped.filter(() => chance.yes(0.8)).map(({ fault }) => fault),
  ...(home.sections.some(({ serial }) => world.trimmedWithBadLot.has(serial)) && chance.yes(0.85)
    ? [{ component: 'outlet', symptom: 'intermittent', operation: 'electric-trimmed' }]
    : []),
  ...Array.from({ length: chance.count(0.7) }, () => chance.pick(siteFaults(world))),
];

const siteFaults = (world: World): readonly Fault[] =>
  [
    'mate-line-closed',
    'crossovers-joined',
    'roof-joined',
    'interior-trimmed',
    'taped',
    'plumbing-trimmed',
  ].flatMap((operation) => world.faults.get(operation) ?? []);
