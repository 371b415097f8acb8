import { agencyLooks, stageToSee } from './agency-look';
import { tell } from './flow';
import { look } from './flow';
import type { Flow } from './flow';
import { close, defectOf, punchList, report } from './finding-out';
import type { Stay } from './line-plan';
import { sendUnsent } from './late';
import type { Card } from './measured';
import { mendAll } from './mending';
import { makeRecordGood } from './record-made-good';
import type { HomeOrder } from './models';
import type { Chance } from './random';
import type { Hidden, Section } from './section-state';
import { asOtherHalf, learn } from './section-state';
import { workAt } from './station-work';
import { telling } from './telling';
import { anotherInspector, later } from './world';
import type { World } from './world';

export type SectionPart = {
  readonly home: HomeOrder;
  readonly index: number;
  readonly stays: readonly Stay[];
  readonly shipMs: number | null;
  /** Left in the yard for the home's own story: what nobody has noticed. */
  readonly escaped: Hidden[];
};

const BEFORE_VISITORS = { station: 'drywall', operations: ['wire-protected'] } as const;

/** One section from the first station to the truck. */
export function* runSection(world: World, part: SectionPart, chance: Chance): Flow {
  const [first] = part.stays;
  const own = part.home.sections[part.index];
  if (first === undefined || own === undefined) return;

  const dispatcher = chance.pick(world.staff.crew('chassis'));
  const at = (ms: number): { occurredAt: string; device: string } => ({
    occurredAt: world.clock.instant(ms),
    device: 'tablet-line',
  });
  yield* tell(
    telling(
      'start',
      { serial: own.serial, at: first.station, ...at(first.fromMs) },
      { actor: dispatcher, atMs: first.fromMs },
    ),
  );
  const cards = yield* look(own.serial, `${JSON.stringify(part.home.design)} ${JSON.stringify(own.design)}`);
  const agency = chance.branch('agency');
  const section: Section = {
    world,
    chance,
    home: part.home,
    serial: own.serial,
    wet: own.design['role'] === 'wet',
    cards: new Map(cards.map((card) => [card.operation, card])),
    done: new Set(),
    unsent: [],
    defects: [],
    recordHolds: [],
    hidden: [],
    shortages: [],
    leftOpen: leftOpenFor(part.stays),
    vouched: new Set(),
    agency,
    seenAt: stageToSee(world.stations, part.index, agency),
    redTags: [],
    at: first.station,
    now: first.fromMs,
  };

  world.underway.set(own.serial, asOtherHalf(section));
  for (const stay of part.stays) {
    if (section.now > world.endMs) return;
    yield* stayAt(section, stay);
  }
  world.underway.delete(own.serial);
  part.escaped.push(...section.hidden);
  if (part.shipMs !== null) yield* ship(section, part.shipMs);
}

/** Who stands before the boards when the story ends has its plates unrecorded: a visitor may ask, and see why not. */
const leftOpenFor = (stays: readonly Stay[]): ReadonlySet<string> => {
  const last = stays.at(-1);
  return new Set(
    last?.toMs === null && last.station === BEFORE_VISITORS.station ? BEFORE_VISITORS.operations : [],
  );
};

function* stayAt(section: Section, stay: Stay): Flow {
  const { world, chance } = section;
  section.at = stay.station;
  section.now = Math.max(section.now, stay.fromMs);
  yield* noticeHidden(section, stay.station);
  yield* workOfShops(section, stay.station);
  if (isLast(section, stay.station)) yield* beforeFinal(section, stay.station);
  yield* workAt(section, stay.station, cardsOf(section, stay.station));
  if (section.seenAt === stay.station && section.now < world.endMs) yield* agencyLooks(section);
  if (stay.pulled !== null) yield* pulled(section, stay, stay.pulled);
  if (stay.toMs === null) return;

  section.now = Math.max(section.now, stay.toMs);
  yield* moveOn(section, stay.station);
  if (section.unsent.length > 0) {
    section.now = later(world, section.now, chance.between(10, 60));
    yield* sendUnsent(section);
  }
}

const cardsOf = (section: Section, station: string): readonly Card[] =>
  [...section.cards.values()].filter((card) => card.station === station);

/** Shop products are made while the section is still some stations away. */
function* workOfShops(section: Section, station: string): Flow {
  for (const shop of section.world.shops.get(station) ?? [])
    yield* workAt(section, shop, cardsOf(section, shop));
}

function* noticeHidden(section: Section, station: string): Flow {
  for (const hidden of [...section.hidden]) {
    if (!section.chance.yes(0.22)) continue;
    section.hidden.splice(section.hidden.indexOf(hidden), 1);
    yield* report(section, hidden, station);
  }
}

const isLast = (section: Section, station: string): boolean =>
  cardsOf(section, station).some(({ label }) => label);

/** Before the last look: the touch-up list, the parts still short, and everything known put right. */
function* beforeFinal(section: Section, station: string): Flow {
  yield* sendUnsent(section);
  yield* punchList(section, station);
  yield* shortagesFitted(section, station);
  yield* mendAll(section);
  yield* makeRecordGood(section);
}

function* shortagesFitted(section: Section, station: string): Flow {
  const { world, chance, serial } = section;
  const missing = chance.count(section.wet ? 0.9 : 0.4);
  for (let count = 0; count < missing; count += 1) {
    const component = chance.pick(['window', 'fixture', 'light-fan', 'counter', 'inside-door', 'alarm']);
    const [said] = yield* tell(
      telling(
        'defect',
        {
          serial,
          class: 'shortage',
          component,
          symptom: 'missing',
          foundAt: station,
          occurredAt: world.clock.instant(section.now),
          device: 'tablet-final',
        },
        { actor: anotherInspector(world, '', chance), atMs: section.now },
      ),
    );
    if (said?.ok !== true) continue;
    section.shortages.push(defectOf(said.key));
  }
  for (const defect of section.shortages.splice(0)) {
    if (chance.yes(0.15)) continue;
    section.now = later(world, section.now, chance.between(5, 30));
    yield* close(section, defect, 'fitted');
  }
}

function* pulled(section: Section, stay: Stay, time: NonNullable<Stay['pulled']>): Flow {
  const { world, chance, serial } = section;
  section.now = Math.max(section.now, time.atMs);
  const actor = world.staff.qualityManager;
  yield* tell(
    telling(
      'pull',
      {
        serial,
        reason: 'waiting-for-part',
        note: chance.pick([
          'Windows not here',
          'Cabinets short one box',
          'Waiting for the truss repair letter',
        ]),
        occurredAt: world.clock.instant(section.now),
        device: 'tablet-line',
      },
      { actor, atMs: section.now },
    ),
  );
  if (time.backMs === null) {
    section.now = world.endMs + 1;
    return;
  }
  section.now = Math.max(section.now, time.backMs);
  yield* tell(
    telling(
      'return',
      { serial, to: stay.station, occurredAt: world.clock.instant(section.now), device: 'tablet-line' },
      { actor, atMs: section.now },
    ),
  );
}

function* moveOn(section: Section, from: string): Flow {
  const { world, chance, serial } = section;
  const next = world.stations[world.stations.indexOf(from) + 1];
  if (next === undefined) return;
  const said = yield* tell(
    telling(
      'move',
      {
        serial,
        to: next,
        occurredAt: world.clock.instant(section.now),
        device: 'tablet-line',
        station: from,
      },
      { actor: chance.pick(world.staff.crew('dispatch')), atMs: section.now },
    ),
  );
  learn(section, said);
}

function* ship(section: Section, shipMs: number): Flow {
  const { world, chance, serial } = section;
  yield* sendUnsent(section);
  yield* mendAll(section);
  section.now = Math.max(section.now, shipMs);
  yield* tell(
    telling(
      'shipment',
      { serial, occurredAt: world.clock.instant(section.now), device: 'tablet-dispatch' },
      { actor: chance.pick(world.staff.crew('dispatch')), atMs: section.now },
    ),
  );
}
