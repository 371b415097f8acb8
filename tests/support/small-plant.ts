import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROUTES } from '@libs/contracts';
import type { AnswerOf, PlantTelling, SentBodyOf } from '@libs/contracts';
import { openPlantAt } from '@libs/plant';
import type { NewPerson, Plant, Sender, Told } from '@libs/plant';
import type { RulebookFiles } from '@libs/rulebook';
import { WET_HALF, demonstrationRulebookFiles } from './demonstration-rulebook';

type Name = PlantTelling;
type Rejected = Extract<Told<never>, { readonly ok: false }>['rejection'];

/** A plant with the demonstration's rulebook, on a SQLite file of its own, and a clock that tests set. */
export type SmallPlant = {
  readonly plant: Plant;
  readonly clock: { now: number };
  /** The rulebook files it was opened with. */
  readonly files: RulebookFiles;
  /** As a tablet sends it: parsed by its contract, under a new key where none is given. Fails the test if rejected. */
  readonly tell: <N extends Name>(
    name: N,
    body: SentBodyOf<N>,
    by?: string,
    more?: More,
  ) => Promise<AnswerOf<N>>;
  /** The code it is rejected with. Fails the test if it is recorded. */
  readonly rejection: <N extends Name>(
    name: N,
    body: SentBodyOf<N>,
    by?: string,
    more?: More,
  ) => Promise<Rejected>;
  readonly typesOf: (serial: string) => Promise<readonly string[]>;
  /** Closed and opened again, as after a restart. */
  readonly reopened: () => Promise<Plant>;
  readonly clear: () => Promise<void>;
};

type More = { readonly key?: string; readonly params?: { readonly [name: string]: string } };

/** One of each; the ids say what they are. */
const PEOPLE: readonly NewPerson[] = [
  ...[
    'chassis',
    'floor',
    'walls',
    'plumbing',
    'electrical',
    'mechanical',
    'roof',
    'exterior',
    'insulation',
    'drywall',
    'paint',
    'cabinet',
    'trim',
    'dispatch',
    'installer',
  ].map((crew) => lead(`${crew}-lead`, crew)),
  { person: 'inspector', name: 'Ines', roles: ['inspector'], crew: 'quality', stations: [] },
  { person: 'manager', name: 'Mara', roles: ['quality-manager'], crew: 'quality', stations: [] },
];

function lead(person: string, crew: string): NewPerson {
  return { person, name: `Name of ${person}`, roles: ['station-lead'], crew, stations: [] };
}

export const MORNING = Date.parse('2026-03-02T13:00:00.000Z');

export const openSmallPlant = async (): Promise<SmallPlant> => {
  const folder = mkdtempSync(join(tmpdir(), 'small-plant-'));
  const clock = { now: MORNING };
  const open = (): Promise<Plant> =>
    openPlantAt({
      at: { file: join(folder, 'ledger.db') },
      keys: join(folder, 'keys'),
      name: 'Test plant',
      clock: () => clock.now,
    });
  let plant = await open();
  let keys = 0;
  const sender = (actor: string, key?: string): Sender => ({
    key: key ?? `key-${String((keys += 1))}`,
    actor,
    assurance: 'pin',
  });
  await plant.open('Test plant', 'America/Chicago', true, sender('manager'));
  const files = demonstrationRulebookFiles();
  const issued = await plant.issueRevision(files, '2026-01-01T00:00:00.000-06:00', sender('manager'));
  if (!issued.ok) throw new Error(JSON.stringify(issued.problems));
  for (const person of PEOPLE) await plant.enroll(person, sender('manager'));

  const send = async <N extends Name>(
    name: N,
    body: SentBodyOf<N>,
    by = 'floor-lead',
    { key, params = {} }: More = {},
  ): Promise<Told<AnswerOf<N>>> => {
    clock.now += 60_000;
    return tellingNamed(plant, name)(ROUTES[name].body.parse(body), sender(by, key), params);
  };

  return {
    get plant() {
      return plant;
    },
    clock,
    files,
    tell: async (name, body, by, more) => {
      const told = await send(name, body, by, more);
      if (!told.ok) throw new Error(`${name} was rejected: ${JSON.stringify(told.rejection)}`);
      return told.answer;
    },
    rejection: async (name, body, by, more) => {
      const told = await send(name, body, by, more);
      if (told.ok) throw new Error(`${name} was recorded: ${JSON.stringify(told.answer)}`);
      return told.rejection;
    },
    typesOf: async (serial) => {
      const history = await plant.asks.history(serial);
      return (history?.entries ?? []).filter((entry) => entry.serial === serial).map(({ type }) => type);
    },
    reopened: async () => {
      await plant.close();
      plant = await open();
      return plant;
    },
    clear: async () => {
      await plant.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
};

/** A name known only at run time picks its function: that body and answer belong together is the table's promise. */
const tellingNamed = <N extends Name>(
  plant: Plant,
  name: N,
): ((
  body: unknown,
  sender: Sender,
  params: { readonly [name: string]: string },
) => Promise<Told<AnswerOf<N>>>) => plant.tell[name] as never;

export const HOME = 'T-100';
export const WET = 'T-100A';
export const DRY = 'T-100B';

const { role: _role, sections: _sections, ...HOME_DESIGN } = WET_HALF;

/** A gas double: wet half and dry half. */
export const orderDouble = (small: SmallPlant, home = HOME): Promise<AnswerOf<'home'>> =>
  small.tell(
    'home',
    {
      home,
      model: 'Alder',
      design: HOME_DESIGN,
      sections: [
        { serial: `${home}A`, design: { role: 'wet' } },
        { serial: `${home}B`, design: { role: 'dry' } },
      ],
    },
    'manager',
  );
