import { randomUUID } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Instant } from '@libs/contracts';
import { readRulebook } from '@libs/rulebook';
import type { Rulebook, RulebookFiles, RulebookProblem } from '@libs/rulebook';
import { Command } from 'commander';
import { isKeyReused, writePlant } from '../composition/open-plant';
import { Usable } from '../exit-code';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { print, printJson } from '../print';

type IssueOptions = DataOptions & { readonly check: boolean; readonly from?: string };

const sender = () => ({ key: randomUUID(), actor: 'office', assurance: 'token' as const });

const filesIn = (folder: string): RulebookFiles => {
  if (!existsSync(folder) || !statSync(folder).isDirectory())
    throw new Usable(`${folder} is not a folder. Name the folder that holds plant.yaml and its neighbours.`);
  const names = readdirSync(folder).filter((name) => /\.(?:yaml|csv)$/.test(name));
  return Object.fromEntries(names.sort().map((name) => [name, readFileSync(join(folder, name), 'utf8')]));
};

const inWords = (problems: readonly RulebookProblem[]): string =>
  [
    `The rulebook cannot be issued: ${problems.length} ${problems.length === 1 ? 'place needs' : 'places need'} mending.`,
    ...problems.map(
      ({ file, row, column, says }) =>
        `  ${file}, row ${row}${column === null ? '' : `, ${column}`}: ${says}`,
    ),
  ].join('\n');

const wellRead = (files: RulebookFiles): Rulebook => {
  const read = readRulebook(files);
  if (!read.ok) throw new Usable(inWords(read.problems));
  return read.rulebook;
};

/** From now on, unless a later or earlier moment is named. History brought in is judged by what was in force then. */
const effectiveFrom = (named: string | undefined): string => {
  if (named === undefined) return new Date().toISOString();
  if (!Instant.safeParse(named).success)
    throw new Usable(
      `--from: ${named} is not a date and time with offset, such as 2026-03-14T06:00:00-05:00.`,
    );
  return named;
};

/** A plant is opened once, under the name its first rulebook gives it. */
const issueIn = (
  folder: string,
  files: RulebookFiles,
  { name, zone }: Rulebook,
  from: string,
): Promise<number> =>
  writePlant(folder, async (plant) => {
    await plant.open(name, zone, false, sender()).catch((error: unknown) => {
      if (!isKeyReused(error)) throw error;
    });
    const issued = await plant.issueRevision(files, from, sender());
    if (!issued.ok) throw new Usable(inWords(issued.problems));
    return issued.revision;
  });

export const issueCommand = (): Command =>
  new Command('issue')
    .description("issue a rulebook's files as the plant's next revision")
    .argument('<folder>', 'holds plant.yaml, operations*.yaml, covers.csv, values.csv and their neighbours')
    .option('--check', 'only say what needs mending', false)
    .option('--from <instant>', 'when it comes into force (default: now)')
    .addOption(dataOption())
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
Every place that needs mending is named at once, with file, row and column; nothing is issued until all are.
Homes whose first section enters the line from then on are judged by it; those on the line keep theirs.
Stop the server first: it keeps the same ledger.

Examples:
  studbook issue ./my-rulebook --check
  studbook issue ./my-rulebook --data ./my-plant`,
    )
    .action(async (folder: string, options: IssueOptions) => {
      const files = filesIn(resolve(folder));
      const rulebook = wellRead(files);
      const { operations, stations } = rulebook;
      const size = { operations: operations.length, stations: stations.length };
      if (options.check) {
        if (options.json) printJson({ ok: true, ...size });
        else print(`All is well: ${size.operations} operations at ${size.stations} stations.`);
        return;
      }
      const revision = await issueIn(folderOf(options), files, rulebook, effectiveFrom(options.from));
      if (options.json) printJson({ revision, ...size });
      else
        print(`Issued as revision ${revision}: ${size.operations} operations at ${size.stations} stations.`);
    });
