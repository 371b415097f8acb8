import type { CoverRow, RulebookBody, TimeRow, ValueRow, When } from './body';
import type { Complain } from './complain';
import { here } from './complain';
import { checkCycles } from './cycles';
import { checkDeadRows } from './dead-rows';
import type { TableEntry } from './disagreements';
import { checkDisagreements } from './disagreements';
import type { Known } from './known';
import type { Catalogues } from './read-catalogues';
import { readCatalogues, readFaults, substitutesIn } from './read-catalogues';
import { readCounties } from './read-counties';
import { readCovers } from './read-covers';
import type { WrittenOperation } from './read-operations';
import { compileOperations, readOperations } from './read-operations';
import { checkPlant, domainsOf, plantPart, readPlant } from './read-plant';
import { readTimes } from './read-times';
import { readValues } from './read-values';
import type { ReadRulebook, Rulebook, RulebookFiles, RulebookProblem } from './rulebook';
import type { PlantFile } from './shapes';
import { readTable } from './table-file';

const COVERS = 'covers.csv';
const VALUES = 'values.csv';
const TIMES = 'times.csv';
const COUNTIES = 'counties.csv';

/** Reads and validates all files, every problem at once. Pure; YAML and CSV parsers are reviewed packages. */
export const readRulebook = (files: RulebookFiles): ReadRulebook => {
  const problems: RulebookProblem[] = [];
  const complain: Complain = (problem) => void problems.push(problem);
  checkNames(files, complain);
  const plant = readPlant(files['plant.yaml'], complain);
  const written = readOperations(files, complain);
  const catalogues = readCatalogues(files, complain);
  // Without a plant file every id would be unknown: nothing useful could be said of the rest.
  if (plant === undefined) return { ok: false, problems };

  const known = knownIn(plant.data, written, catalogues);
  checkPlant(plant, known, complain);
  const substitutes = substitutesIn(catalogues);
  const body = { ...readBody(files, written, known, complain), substitutes };
  checkTables(body, complain);
  const rulebook = assemble(plant.data, catalogues, body, readFaults(files, known, complain));
  checkDeadRows(body, complain);
  // Of a row that is wrong already nothing more could be said that would help.
  if (problems.length === 0) checkCycles(body, rulebook.stations, complain);
  return problems.length === 0 ? { ok: true, rulebook } : { ok: false, problems };
};

const NAMES =
  /^(?:plant\.yaml|operations.*\.yaml|(?:covers|values|times|counties|components|symptoms|faults|lots|instruments)\.csv)$/;

const checkNames = (files: RulebookFiles, complain: Complain): void => {
  Object.keys(files)
    .filter((file) => !NAMES.test(file))
    .forEach((file) => complain({ file, row: 1, column: null, says: 'is no file of a rulebook' }));
};

const knownIn = (plant: PlantFile, written: readonly WrittenOperation[], catalogues: Catalogues): Known => ({
  stations: idsOf(plant.stations),
  crews: idsOf(plant.crews),
  places: idsOf(plant.places),
  operations: new Set(written.map(({ is }) => is.id)),
  lotKinds: idsOf(catalogues.lotKinds),
  instrumentKinds: idsOf(catalogues.instrumentKinds),
  components: idsOf(catalogues.components),
  symptoms: idsOf(catalogues.symptoms),
  details: idsOf(plant.details),
  domains: domainsOf(plant),
});

const idsOf = (list: readonly { readonly id: string }[]): ReadonlySet<string> =>
  new Set(list.map(({ id }) => id));

const readBody = (
  files: RulebookFiles,
  written: readonly WrittenOperation[],
  known: Known,
  complain: Complain,
): Omit<RulebookBody, 'substitutes'> => {
  const operations = compileOperations(written, known, complain);
  const covers = readCovers(readTable(COVERS, files[COVERS], complain), known, complain);
  const values = readValues(readTable(VALUES, files[VALUES], complain), known, complain);
  const times = readTimes(readTable(TIMES, files[TIMES], complain), known, complain);
  const whens = [
    ...operations.flatMap(({ when, variants }) => [when, ...variants.map((variant) => variant.when)]),
    ...[...covers, ...values, ...times].map(({ when }) => when),
  ];
  return {
    domains: known.domains,
    details: known.details,
    askedAttributes: new Set(whens.flatMap((when: When) => when.map(({ attribute }) => attribute))),
    operations,
    covers: tablesOf(
      covers,
      ({ cover }) => cover,
      ({ hide }) => hide.operation,
    ),
    values: tablesOf(
      values,
      ({ operation }) => operation,
      ({ planned }) => planned.characteristic,
    ),
    times: tablesOf(
      times,
      ({ operation }) => operation,
      ({ rule }) => rule.since,
    ),
    counties: readCounties(readTable(COUNTIES, files[COUNTIES], complain), known, complain),
  };
};

/** Rows filed by operation, then as one decision table for each thing they speak of, in file order. */
const tablesOf = <R>(
  rows: readonly R[],
  operationOf: (row: R) => string,
  subjectOf: (row: R) => string,
): ReadonlyMap<string, readonly (readonly R[])[]> =>
  new Map(
    [...grouped(rows, operationOf)].map(([operation, own]) => [
      operation,
      [...grouped(own, subjectOf).values()],
    ]),
  );

const grouped = <R>(rows: readonly R[], keyOf: (row: R) => string): ReadonlyMap<string, readonly R[]> => {
  const groups = new Map<string, R[]>();
  for (const row of rows) {
    const group = groups.get(keyOf(row));
    if (group === undefined) groups.set(keyOf(row), [row]);
    else group.push(row);
  }
  return groups;
};

const checkTables = (body: RulebookBody, complain: Complain): void => {
  const appliesTo = new Map(body.operations.map(({ id, when }) => [id, when]));
  const check = <R>(
    tables: ReadonlyMap<string, readonly (readonly R[])[]>,
    entryOf: (row: R) => TableEntry,
    [file, column]: readonly [string, string],
  ): void => {
    for (const [operation, own] of tables) {
      const scope = { applies: appliesTo.get(operation) ?? [], domains: body.domains };
      own.forEach((table) =>
        checkDisagreements(table.map(entryOf), scope, (row) => here(complain, file, row), column),
      );
    }
  };
  check(body.covers, coverEntry, [COVERS, 'hides']);
  check(body.values, valueEntry, [VALUES, 'characteristic']);
  check(body.times, timeEntry, [TIMES, 'since']);
};

/** Two rows may name different sources and labels for the same rule: that is no disagreement. */
const coverEntry = ({ row, when, hide: { source: _, ...hide } }: CoverRow): TableEntry => ({
  row,
  when,
  says: JSON.stringify(hide),
});

const timeEntry = ({ row, when, rule: { source: _, ...rule } }: TimeRow): TableEntry => ({
  row,
  when,
  says: JSON.stringify(rule),
});

const valueEntry = ({
  row,
  when,
  asDesign,
  planned: { source: _, label: __, ...planned },
}: ValueRow): TableEntry => ({
  row,
  when,
  says: JSON.stringify({ asDesign, ...planned }),
});

const assemble = (
  plant: PlantFile,
  catalogues: Catalogues,
  body: RulebookBody,
  faults: Rulebook['faults'],
): Rulebook => ({
  ...plantPart(plant),
  ...catalogues,
  faults,
  operations: body.operations.map(({ id, fields: { station, name, crew, entry, scope } }) => ({
    id,
    station,
    name,
    crew,
    entry,
    scope,
  })),
  body,
});
