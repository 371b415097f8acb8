import { createWriteStream } from 'node:fs';
import { resolve } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { AnswerOf } from '@libs/contracts';
import { Day } from '@libs/contracts';
import type { Which } from '@libs/plant';
import { Command, Option } from 'commander';
import { stringify } from 'csv-stringify/sync';
import { readPlant } from '../composition/read-plant';
import { Usable } from '../exit-code';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { print } from '../print';
import { progressTo } from '../progress';
import { filesIn, wellRead } from '../rulebook-folder';

type Line = AnswerOf<'retroCheck'>;
type Found = Extract<Line, { readonly is: 'found' }>;

type Options = DataOptions & {
  readonly revision?: string;
  readonly rulebook?: string;
  readonly from?: string;
  readonly to?: string;
  readonly out?: string;
  readonly newOnly: boolean;
  readonly language: string;
};

export const retroCheckCommand = (): Command =>
  new Command('retro-check')
    .description('list what a revision would not have accepted of what is on record')
    .option('--revision <number>', 'a revision that was issued (default: the latest)')
    .option('--rulebook <folder>', "a rulebook's files that were not issued")
    .option('--from <day>', 'first day, 2026-03-01')
    .option('--to <day>', 'last day')
    .option('--new-only', 'leave out what was said at the time too', false)
    .option('--out <file>', 'write a CSV file')
    .addOption(new Option('--language <language>').choices(['en', 'es']).default('en'))
    .addOption(dataOption())
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
Judged again are recorded values and the order of work, under the operations of that revision. With --json every line
is a JSON document of its own, as it is found. It only reads: a running server is not disturbed.

Examples:
  studbook retro-check --revision 3 --from 2026-01-01 --out touched.csv
  studbook retro-check --rulebook ./my-rulebook --json | jq -r 'select(.is == "found") | .serial' | sort -u`,
    )
    .action(run);

const run = async (options: Options): Promise<void> => {
  const which = whichOf(options);
  const span = { from: dayOf('--from', options.from), to: dayOf('--to', options.to) };
  if (span.from !== null && span.to !== null && span.from > span.to)
    throw new Usable(`--to ${span.to} is before --from ${span.from}.`);

  await readPlant(folderOf(options), async (plant) => {
    const lines = await plant.rulebook.retroCheck(which, span);
    if (lines === undefined)
      throw new Usable(`There is no revision ${options.revision ?? ''} in this plant.`);
    await tellLines(lines, options);
  });
};

const whichOf = ({ revision, rulebook }: Options): Which => {
  if (rulebook !== undefined && revision !== undefined)
    throw new Usable('Name a --revision or a --rulebook, not both.');
  if (rulebook !== undefined) {
    const files = filesIn(resolve(rulebook));
    wellRead(files);
    return { files };
  }
  if (revision === undefined) return { revision: null };
  if (!/^[1-9]\d{0,6}$/.test(revision))
    throw new Usable(`--revision: ${revision} is not a revision's number.`);
  return { revision: Number(revision) };
};

const dayOf = (name: string, day: string | undefined): string | null => {
  if (day === undefined) return null;
  if (!Day.safeParse(day).success) throw new Usable(`${name}: ${day} is not a day, such as 2026-03-14.`);
  return day;
};

/** Said as they come; into a file where one is named, no faster than it takes them. */
const tellLines = async (lines: AsyncIterable<Line>, options: Options): Promise<void> => {
  const found = saying(lines, options);
  if (options.out !== undefined) {
    await pipeline(Readable.from(csvOf(found, options)), createWriteStream(resolve(options.out)));
    return;
  }
  for await (const _ of found);
};

/** Says every line on its way, and hands on what was found. */
async function* saying(lines: AsyncIterable<Line>, options: Options): AsyncGenerator<Found> {
  const progress = progressTo(process.stderr);
  for await (const line of lines) {
    if (line.is === 'progress') progress.at(line.homes, line.of, 'homes');
    if (line.is === 'found' && options.newOnly && line.saidThen) continue;
    tellLine(line, options);
    if (line.is === 'found') yield line;
  }
  progress.end();
}

async function* csvOf(found: AsyncIterable<Found>, options: Options): AsyncGenerator<string> {
  yield stringify([COLUMNS], CSV);
  for await (const one of found) yield stringify([cellsOf(one, options)], CSV);
}

/** Excel and friends read CRLF without asking (RFC 4180). */
const CSV = { record_delimiter: 'windows' } as const;

const COLUMNS = [
  'serial',
  'home',
  'operation',
  'station',
  'occurred at',
  'position',
  'judged then by revision',
  'rule',
  'grade',
  'said then',
  'reason',
];

const cellsOf = (found: Found, { language }: Options): readonly string[] => [
  found.serial,
  found.home,
  found.operation,
  found.station ?? '',
  found.occurredAt,
  String(found.position),
  String(found.judgedBy ?? ''),
  found.rule,
  found.grade,
  found.saidThen ? 'yes' : 'no',
  language === 'es' ? found.says.es : found.says.en,
];

const tellLine = (line: Line, options: Options): void => {
  if (options.json) {
    if (line.is !== 'progress') print(JSON.stringify(line));
    return;
  }
  const text = textOf(line, options);
  if (text !== null) print(text);
};

const textOf = (line: Line, { out, language }: Options): string | null => {
  switch (line.is) {
    case 'found':
      if (out !== undefined) return null;
      return `${line.serial}  ${line.occurredAt.slice(0, 10)}  ${language === 'es' ? line.says.es : line.says.en}${line.saidThen ? ' [said then too]' : ''}`;
    case 'unfit':
      return `${line.serial}  no plan can be made of its design: ${line.says}`;
    case 'done':
      return `${line.found} findings on ${line.sections} sections, ${line.fresh} of them not said at the time; ${line.judged} entries of ${line.homes} homes judged.`;
    case 'progress':
      return null;
  }
};
