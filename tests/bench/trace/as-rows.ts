import type { ClaimRow, HomeRow, RecordMark, TraceInput, WorkRow } from '@libs/tracing';
import { nameOf } from './planted-cause';
import type { PlantedPlant } from './planted-plant';
import type { Work } from './line';

/** The plant as its record has it: what the tracer is given, and nothing of what truly happened. */
export const asRows = (plant: PlantedPlant): TraceInput => {
  const { line, claims } = plant;
  const { shape } = line;
  const rows = workRows(plant);
  return {
    component: 'part',
    symptom: 'fails',
    asOf: dateOf(line.lastDay),
    claims: claims.map(({ section, reported, noticed }, at): ClaimRow => ({
      claim: `C${at}`,
      home: homeOf(plant, section),
      section: shape.sectionsNamed ? (line.sections[section]?.serial ?? null) : null,
      component: 'part',
      symptom: 'fails',
      place: null,
      noticedOn: dateOf(noticed),
      asFound: reported === null ? null : { pointsTo: [reported], speaksAgainst: [] },
    })),
    homes: line.homes.map((home, at): HomeRow => ({
      home: home.id,
      sections: line.sections.flatMap(({ serial, home: of, dry }) =>
        of === at ? [{ serial, role: dry ? 'dry' : 'wet' }] : [],
      ),
      model: nameOf('design', null, home.model),
      builtOn: dateOf(home.day),
      occupiedOn: dateOf(home.occupied),
      where: 'sold',
      hauler: nameOf('hauler', null, home.hauler),
      installer: nameOf('installer', null, home.installer),
      retailer: nameOf('retailer', null, home.retailer),
      work: rows[at] ?? [],
    })),
    lots: line.makersOfLots.flatMap((makers, operation) =>
      makers.map((maker, lot) => ({
        lot: nameOf('lot', operation, lot),
        maker: nameOf('maker', operation, maker),
      })),
    ),
    faults: [
      {
        component: 'part',
        symptom: 'fails',
        causes: shape.map.flatMap(({ source, letter }) =>
          source.startsWith('x-') || source === 'office' ? [] : [{ operation: source, weight: letter }],
        ),
        elsewhere: shape.map.flatMap(({ source, letter }) =>
          source.startsWith('x-') || source === 'office' ? [{ cause: source, weight: letter }] : [],
        ),
      },
    ],
    operations: shape.operations.map(({ id, station }) => ({ operation: id, station })),
    patterns: [],
  };
};

const DAY_MS = 86_400_000;
const FIRST_DAY = Date.UTC(2021, 0, 4);
const dateOf = (day: number): string => new Date(FIRST_DAY + day * DAY_MS).toISOString().slice(0, 10);

const homeOf = ({ line }: PlantedPlant, section: number): string =>
  line.homes[line.sections[section]?.home ?? -1]?.id ?? '';

const workRows = ({ line }: PlantedPlant): readonly (readonly WorkRow[])[] => {
  const rows: WorkRow[][] = line.homes.map(() => []);
  line.sections.forEach(({ serial, home }, section) => {
    const built = line.homes[home];
    line.shape.operations.forEach(({ id, station }, operation) => {
      const work = line.work[operation]?.[section];
      if (work === undefined || built === undefined) return;
      rows[home]?.push({
        unit: serial,
        operation: id,
        station,
        at: work.recorded ? dateOf(built.day) : null,
        ...recordOf(work, operation),
        revision: nameOf('revision', null, built.revision),
      });
    });
  });
  return rows;
};

const recordOf = (
  work: Work,
  operation: number,
): Pick<WorkRow, 'crew' | 'shift' | 'lots' | 'instruments' | 'marks'> => {
  if (!work.recorded) return { crew: null, shift: null, lots: [], instruments: [], marks: ['missing'] };
  return {
    crew: nameOf('crew', null, work.crew),
    shift: nameOf('shift', null, work.shift),
    lots: work.lot === null ? [] : [nameOf('lot', operation, work.lot)],
    instruments: work.instrument === null ? [] : [nameOf('instrument', operation, work.instrument)],
    marks: [...work.marks].map(asMark),
  };
};

const asMark = (mark: string): RecordMark => {
  const known: Readonly<Record<string, RecordMark>> = {
    late: 'late',
    corrected: 'corrected',
    'near-limit': 'near-limit',
    reworked: 'reworked',
    defect: 'defect',
    'instrument-out': 'instrument-out',
  };
  const found = known[mark];
  if (found === undefined) throw new Error(`no such mark: ${mark}`);
  return found;
};
