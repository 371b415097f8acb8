import type { Words } from '@libs/judge';
import type { Rulebook } from '../rulebook';
import type { Change, Told, Touched } from './change';
import { becameOf, differing, words } from './change';
import type { Both } from './rows';

type Item = { readonly id: string; readonly name: Words; readonly is: string };

/** What a rulebook lists besides its operations and tables, and what in it is the approved design's. */
const listsOf = (rulebook: Rulebook): readonly (readonly [string, readonly Item[], Touched])[] => [
  ['plant.yaml', rulebook.stations.map(({ id, name, ...rest }) => item(id, name, rest)), null],
  ['plant.yaml', rulebook.crews.map(({ id, name }) => item(id, name)), null],
  ['plant.yaml', rulebook.places.map(({ id, name }) => item(id, name)), null],
  ['plant.yaml', rulebook.attributes.map(({ id, name, ...rest }) => item(id, name, rest)), 'design'],
  ['plant.yaml', rulebook.details.map(({ id, name }) => item(id, name)), 'design'],
  ['plant.yaml', rulebook.texts.map(({ id, name }) => item(id, name)), null],
  ['plant.yaml', rulebook.reasons.map(({ id, name, ...rest }) => item(id, name, rest)), null],
  ['lots.csv', rulebook.lotKinds.map(({ id, name, ...rest }) => item(id, name, rest)), 'design'],
  [
    'instruments.csv',
    rulebook.instrumentKinds.map(({ id, name, ...rest }) => item(id, name, rest)),
    'manual',
  ],
  ['components.csv', rulebook.components.map(({ id, name }) => item(id, name)), null],
  ['symptoms.csv', rulebook.symptoms.map(({ id, name }) => item(id, name)), null],
  ['faults.csv', rulebook.faults.map((fault) => faultItem(fault)), null],
  ['counties.csv', countiesOf(rulebook), 'design'],
];

const item = (id: string, name: Words, rest: object = {}): Item => ({ id, name, is: JSON.stringify(rest) });

const faultItem = ({ component, symptom, ...rest }: Rulebook['faults'][number]): Item =>
  item(`${component} ${symptom}`, plain(`${component}: ${symptom}`), rest);

const countiesOf = ({ body }: Rulebook): readonly Item[] =>
  [...body.counties].map(([id, { zones }]) => item(id, plain(id), zones));

const plain = (text: string): Words => ({ en: text, es: text });

export const listChanges = (both: Both<Rulebook>): readonly Change[] => {
  const before = listsOf(both.before);
  return listsOf(both.after).flatMap(([file, items, touches], index) =>
    itemChanges(file, { before: before[index]?.[1] ?? [], after: items }, touches),
  );
};

const itemChanges = (file: string, both: Both<readonly Item[]>, touches: Touched): readonly Change[] => {
  const was = new Map(both.before.map((one) => [one.id, one]));
  const is = new Map(both.after.map((one) => [one.id, one]));
  return [...new Set([...is.keys(), ...was.keys()])].flatMap((id) =>
    itemChange(file, was.get(id), is.get(id), touches),
  );
};

const itemChange = (
  file: string,
  old: Item | undefined,
  now: Item | undefined,
  touches: Touched,
): readonly Change[] => {
  const shown = now ?? old;
  const aspects = differing([
    ['name', toldOf(old?.name), toldOf(now?.name)],
    ['else', detailsOf(old), detailsOf(now)],
  ]);
  if (shown === undefined || aspects.length === 0) return [];

  const change = becameOf(old, now);
  const isNamed = change === 'changed' && aspects.every(({ aspect }) => aspect === 'name');
  return [
    {
      what: file === 'counties.csv' ? 'county' : 'list',
      change,
      id: shown.id,
      subject: shown.name,
      of: null,
      conditions: [],
      aspects,
      touches: isNamed ? null : touches,
      file,
      row: null,
    },
  ];
};

const detailsOf = (item: Item | undefined): Told | null => (item === undefined ? null : words(item.is));

const toldOf = (name: Words | undefined): Told | null =>
  name === undefined ? null : { is: 'words', words: name };

export const plantChanges = ({ before, after }: Both<Rulebook>): readonly Change[] => {
  const aspects = differing([
    ['name', words(before.name), words(after.name)],
    ['else', words(plantText(before)), words(plantText(after))],
  ]);
  if (aspects.length === 0) return [];
  const touches = before.enforced === after.enforced ? null : 'manual';
  const subject = plain(after.name);
  return [
    {
      what: 'plant',
      change: 'changed',
      id: 'plant',
      subject,
      of: null,
      conditions: [],
      aspects,
      touches,
      file: 'plant.yaml',
      row: null,
    },
  ];
};

const plantText = ({ zone, enforced }: Rulebook): string =>
  `${zone}, ${enforced ? 'order enforced' : 'order not enforced'}`;
