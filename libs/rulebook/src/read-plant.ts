import type { Words } from '@libs/judge';
import type { Domain } from './body';
import type { Complain, ComplainHere } from './complain';
import { here } from './complain';
import type { Known } from './known';
import { checkKnown, checkUnique } from './known';
import type { Attribute, Named, Rulebook, Station } from './rulebook';
import type { PlantFile } from './shapes';
import { PlantShape } from './shapes';
import type { YamlFile } from './yaml-file';
import { readYaml } from './yaml-file';

const FILE = 'plant.yaml';

export const readPlant = (text: string | undefined, complain: Complain): YamlFile<PlantFile> | undefined => {
  if (text !== undefined) return readYaml(FILE, text, PlantShape, complain);

  complain({ file: FILE, row: 1, column: null, says: 'is missing: a rulebook begins with it' });
  return undefined;
};

type Titled = { readonly id: string; readonly en: string; readonly es: string };

export const wordsOf = ({ en, es }: { readonly en: string; readonly es: string }): Words => ({ en, es });
export const namedOf = ({ id, en, es }: Titled): Named => ({ id, name: { en, es } });

/** The plant's part of the rulebook, as everyone gets it. */
export const plantPart = (
  plant: PlantFile,
): Pick<
  Rulebook,
  | 'name'
  | 'zone'
  | 'enforced'
  | 'stations'
  | 'crews'
  | 'places'
  | 'attributes'
  | 'details'
  | 'texts'
  | 'plate'
  | 'reasons'
> => ({
  name: plant.name,
  zone: plant.zone,
  enforced: plant.enforced,
  stations: plant.stations.map(stationOf),
  crews: plant.crews.map(namedOf),
  places: plant.places.map(namedOf),
  attributes: plant.attributes.map(attributeOf),
  details: plant.details.map(namedOf),
  texts: plant.texts.map(namedOf),
  plate: plant.plate.map((line) => ({
    ...namedOf(line),
    from: line.from,
    of: line.of,
    text: line.text ?? null,
    when: line.when,
  })),
  reasons: plant.reasons.map((reason) => ({ ...namedOf(reason), for: reason.for })),
});

const stationOf = ({
  id,
  pos,
  kind,
  en,
  es,
  lanes,
  facts,
  lots,
}: PlantFile['stations'][number]): Station => ({
  id,
  pos,
  kind,
  name: { en, es },
  lanes,
  facts,
  lotKinds: lots,
});

const attributeOf = ({ id, en, es, numeric, values }: PlantFile['attributes'][number]): Attribute => ({
  id,
  name: { en, es },
  numeric,
  values: values.map(({ value, ...says }) => ({ value, says })),
});

export const domainsOf = (plant: PlantFile): ReadonlyMap<string, Domain> =>
  new Map(
    plant.attributes.map(({ id, numeric, scope, rising, values }) => [
      id,
      { id, numeric, ofSection: scope === 'section', rising, values: values.map(({ value }) => value) },
    ]),
  );

type Listed = 'stations' | 'crews' | 'places' | 'reasons' | 'details' | 'texts' | 'attributes' | 'plate';
const LISTS = ['stations', 'crews', 'places', 'reasons', 'details', 'texts', 'attributes', 'plate'] as const;

/** What in the plant file refers to something that is not there, or is there twice. */
export const checkPlant = ({ data, rowOf }: YamlFile<PlantFile>, known: Known, complain: Complain): void => {
  const at = (list: Listed, index: number): ComplainHere => here(complain, FILE, rowOf([list, index]));
  for (const list of LISTS) {
    const ids = data[list].map(({ id }, index) => ({ id, index }));
    checkUnique(
      ids,
      ({ id }) => id,
      ({ index }) => at(list, index),
      `${list}.id`,
    );
  }
  const facts = new Set([...known.domains.keys(), ...known.details]);
  data.stations.forEach((station, index) => {
    checkKnown(station.facts, ['attribute of the design', facts], 'stations.facts', at('stations', index));
    checkKnown(station.lots, ['kind of lot', known.lotKinds], 'stations.lots', at('stations', index));
    if ((station.kind === 'line') !== (station.pos !== null)) {
      at('stations', index)('stations.pos', 'a station of the line has a place in it, and no other has');
    }
  });
  const onLine = data.stations.map(({ pos }, index) => ({ pos, index })).filter(({ pos }) => pos !== null);
  checkUnique(
    onLine,
    ({ pos }) => String(pos),
    ({ index }) => at('stations', index),
    'stations.pos',
  );
  data.plate.forEach((line, index) => checkPlateLine(line, facts, at('plate', index)));
  data.attributes.forEach((attribute, index) => checkAttribute(attribute, at('attributes', index)));
};

const checkPlateLine = (
  { from, of, text, when }: PlantFile['plate'][number],
  facts: ReadonlySet<string>,
  complain: ComplainHere,
): void => {
  if (from === 'design') checkKnown(of, ['attribute of the design', facts], 'plate.of', complain);
  checkKnown(Object.keys(when), ['attribute of the design', facts], 'plate.when', complain);
  if (from === 'text' && text === undefined) complain('plate.text', 'is missing: this line is a text');
  if ((from === 'design' || from === 'recorded') && of.length === 0) {
    complain('plate.of', 'is empty: the line has nothing to say');
  }
};

const checkAttribute = (
  { numeric, values }: PlantFile['attributes'][number],
  complain: ComplainHere,
): void => {
  checkUnique(
    values,
    ({ value }) => value,
    () => complain,
    'attributes.values',
  );
  if (!numeric && values.length === 0)
    complain('attributes.values', 'has no values: only a number needs none');
  if (!numeric) return;
  values
    .filter(({ value }) => !/^-?(?:0|[1-9]\d*)(?:\.\d+)?$/.test(value))
    .forEach(({ value }) => complain('attributes.values', `\`${value}\` is no number`));
};
