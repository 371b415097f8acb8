import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { readRulebook } from '@libs/rulebook';
import type { Rulebook, RulebookFiles, RulebookProblem } from '@libs/rulebook';
import { Usable } from './exit-code';

/** The rulebook's files in a folder, by name. */
export const filesIn = (folder: string): RulebookFiles => {
  if (!existsSync(folder) || !statSync(folder).isDirectory())
    throw new Usable(`${folder} is not a folder. Name the folder that holds plant.yaml and its neighbours.`);
  const names = readdirSync(folder).filter((name) => /\.(?:yaml|csv)$/.test(name));
  return Object.fromEntries(names.sort().map((name) => [name, readFileSync(join(folder, name), 'utf8')]));
};

export const problemsInWords = (problems: readonly RulebookProblem[]): string =>
  [
    `The rulebook cannot be issued: ${problems.length} ${problems.length === 1 ? 'place needs' : 'places need'} mending.`,
    ...problems.map(
      ({ file, row, column, says }) =>
        `  ${file}, row ${row}${column === null ? '' : `, ${column}`}: ${says}`,
    ),
  ].join('\n');

export const wellRead = (files: RulebookFiles): Rulebook => {
  const read = readRulebook(files);
  if (!read.ok) throw new Usable(problemsInWords(read.problems));
  return read.rulebook;
};
