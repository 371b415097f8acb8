import type { AnswerOf } from '@libs/contracts';
import { Command } from 'commander';
import { readPlant } from '../composition/read-plant';
import { Usable } from '../exit-code';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { print, printJson } from '../print';

type History = AnswerOf<'history'>;
type Entry = History['entries'][number];
type Language = 'en' | 'es';

export const historyCommand = (): Command =>
  new Command('history')
    .description('print how a home was built, in the order it happened')
    .argument('<serial>', "a home's serial or any of its sections'")
    .addOption(dataOption())
    .option('--language <language>', 'en or es', 'en')
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
Examples:
  studbook history H26-1003-A
  studbook history H26-1003-A --language es
  studbook history H26-1003-A --json | jq '.entries[] | select(.late)'

It only reads: a running server is not disturbed.`,
    )
    .action(async (serial: string, options: DataOptions & { readonly language: string }) => {
      const history = await readPlant(folderOf(options), (plant) => plant.asks.history(serial));
      if (history === undefined) throw new Usable(`Nothing is recorded under ${serial}.`);

      if (options.json) printJson(history);
      else print(historyText(history, options.language === 'es' ? 'es' : 'en'));
    });

export const historyText = (history: History, language: Language): string => {
  const allLate = history.entries.every(({ late }) => late);
  return [
    `${history.home}  ${history.model}`,
    ...history.sections.map(
      ({ serial, role, stage, label }) =>
        `  ${[serial, role, stage, label].filter((one) => one !== null).join('  ')}`,
    ),
    '',
    ...history.entries.flatMap((entry) => entryLines(entry, language, !allLate)),
    '',
    ...(allLate ? ['All of it was entered after it happened.'] : []),
    `${history.entries.length} entries; the ledger stands at position ${history.position}.`,
  ].join('\n');
};

const entryLines = (entry: Entry, language: Language, tellsLate: boolean): readonly string[] => {
  const { occurredAt, serial, by, late, correctedBy } = entry;
  const marks = [
    ...(late && tellsLate ? ['entered late'] : []),
    ...(correctedBy.length > 0 ? [`corrected by ${correctedBy.join(', ')}`] : []),
  ];
  return [
    `${String(entry.position).padStart(7)}  ${occurredAt.slice(0, 16).replace('T', ' ')}  ${serial}  ` +
      `${entry.says[language]} (${by})${marks.length > 0 ? ` [${marks.join('; ')}]` : ''}`,
    ...entry.findings.map(({ grade, says }) => `${' '.repeat(9)}${grade}: ${says[language]}`),
    ...(entry.note === null ? [] : [`${' '.repeat(9)}"${entry.note}"`]),
  ];
};
