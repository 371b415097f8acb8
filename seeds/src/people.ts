import type { NewPerson } from '@libs/plant';

/** Invented people: first names only, no one in particular. */
const NAMES = [
  'Ada', 'Bruno', 'Carla', 'Dario', 'Elsa', 'Fidel', 'Greta', 'Hugo', 'Ines', 'Jonas', 'Karin', 'Leon',
  'Mara', 'Nico', 'Olga', 'Pablo', 'Quinn', 'Rosa', 'Sven', 'Tilda', 'Ugo', 'Vera', 'Wanda', 'Xavi',
  'Yara', 'Zeno', 'Alma', 'Boris', 'Celia', 'Dina', 'Emil', 'Flora', 'Gil', 'Hilda', 'Ivo', 'Juana',
  'Kurt', 'Lena', 'Milo', 'Nora', 'Otto', 'Petra', 'Raul', 'Selma', 'Timo', 'Uma', 'Vito', 'Willa',
  'Xenia', 'Yago', 'Zita', 'Arno', 'Berta', 'Ciro', 'Delia', 'Enzo', 'Frida', 'Gino', 'Hana', 'Igor',
] as const; // prettier-ignore

/** How many of each crew, in the order of the line. */
const CREW_SIZES: readonly (readonly [string, number])[] = [
  ['chassis', 2],
  ['floor', 3],
  ['walls', 3],
  ['plumbing', 3],
  ['electrical', 4],
  ['mechanical', 2],
  ['roof', 4],
  ['exterior', 4],
  ['insulation', 3],
  ['drywall', 3],
  ['paint', 3],
  ['cabinet', 2],
  ['trim', 3],
  ['dispatch', 2],
  ['installer', 4],
];

/** Who signs in on the demonstration plant, with the PIN that its sign-in screen shows. */
export type DemoPerson = NewPerson & { readonly pin: string };

/** Four digits that differ from person to person. They guard nothing: the demonstration shows them. */
const pinOf = (index: number): string => String(1_000 + ((index * 397 + 211) % 9_000));

const crewPeople = (): readonly Omit<NewPerson, 'person' | 'name'>[] =>
  CREW_SIZES.flatMap(([crew, size]) =>
    Array.from({ length: size }, () => ({ roles: ['station-lead'], crew, stations: [] })),
  );

const office = (): readonly Omit<NewPerson, 'person' | 'name'>[] => [
  ...Array.from({ length: 4 }, () => ({ roles: ['inspector'], crew: 'quality', stations: [] })),
  { roles: ['quality-manager'], crew: 'quality', stations: [] },
  { roles: ['quality-manager', 'administrator'], crew: 'quality', stations: [] },
  { roles: ['auditor'], crew: null, stations: [] },
  { roles: ['agency-inspector'], crew: null, stations: [] },
];

export const demoPeople = (): readonly DemoPerson[] =>
  [...crewPeople(), ...office()].map((person, index) => ({
    ...person,
    person: `p-${String(101 + index)}`,
    name: NAMES[index] ?? `Person ${String(index + 1)}`,
    pin: pinOf(index),
  }));

export type Staff = {
  readonly all: readonly DemoPerson[];
  readonly crew: (crew: string) => readonly string[];
  readonly inspectors: readonly string[];
  readonly qualityManager: string;
  /** The inspection agency's own. */
  readonly agency: string;
};

export const staffOf = (people: readonly DemoPerson[]): Staff => {
  const crews = new Map<string, string[]>();
  for (const { crew, person, roles } of people) {
    if (crew === null || !roles.includes('station-lead')) continue;
    crews.set(crew, [...(crews.get(crew) ?? []), person]);
  }
  const holding = (role: string): readonly string[] =>
    people.filter(({ roles }) => roles.includes(role)).map(({ person }) => person);
  const [qualityManager] = holding('quality-manager');
  const [agency] = holding('agency-inspector');
  if (agency === undefined) throw new Error('The demonstration plant has no inspection agency');
  if (qualityManager === undefined) throw new Error('The demonstration plant has no quality manager');
  return {
    all: people,
    crew: (crew) => crews.get(crew) ?? [],
    inspectors: holding('inspector'),
    qualityManager,
    agency,
  };
};

/** Those a visitor may sign in as: a lead of each crew that stands at the line, inspectors, the office. */
export const signIns = (people: readonly DemoPerson[]): readonly DemoPerson[] => {
  const seen = new Set<string>();
  return people.filter(({ crew, roles }) => {
    const kind = `${roles.join(' ')} ${roles.includes('station-lead') ? (crew ?? '') : ''}`;
    if (seen.has(kind) || !isShown(kind)) return false;
    seen.add(kind);
    return true;
  });
};

const isShown = (kind: string): boolean =>
  !kind.startsWith('station-lead') ||
  ['electrical', 'exterior', 'insulation', 'drywall', 'installer'].some((crew) => kind.endsWith(crew));
