import { Command, InvalidArgumentError } from 'commander';
import { makeDemonstration } from '../composition/make-demonstration';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { print, printJson } from '../print';
import { progressTo } from '../progress';

type DemoOptions = DataOptions & { readonly homes: number; readonly seed: string; readonly lastDay?: string };

const MOST_HOMES = 5_000;

const homesOf = (text: string): number => {
  const homes = Number(text);
  if (Number.isInteger(homes) && homes >= 1 && homes <= MOST_HOMES) return homes;
  throw new InvalidArgumentError(`a whole number from 1 to ${MOST_HOMES}`);
};

const dayOf = (text: string): string => {
  if (/^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(Date.parse(text))) return text;
  throw new InvalidArgumentError('a day such as 2026-11-25');
};

export const demoCommand = (): Command =>
  new Command('demo')
    .description('fill an empty data folder with the demonstration plant')
    .addOption(dataOption())
    .option('--homes <number>', 'how many homes to build', homesOf, 300)
    .option('--seed <seed>', 'the same seed and last day give the same ledger', '1')
    .option('--last-day <day>', 'the day the story ends; left out: today', dayOf)
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
Everyone and everything in it is invented. It tells about a year of a small plant through the same door as a
tablet: scans, sign-offs, tests, defects, rework, labels, homes at their site. The line is full when it ends.

Examples:
  studbook demo
  studbook demo --homes 20 --seed 7 --data /tmp/plant --json

A data folder that holds a ledger already is refused and left as it is.`,
    )
    .action(async (options: DemoOptions) => {
      const progress = progressTo(process.stderr);
      const made = await makeDemonstration({
        folder: folderOf(options),
        homes: options.homes,
        seed: options.seed,
        lastDay: options.lastDay ?? null,
        progress: (share, day) => progress.at(Math.floor(share * 100), 100, `Demonstration plant, ${day}`),
      });
      progress.end();
      if (options.json) printJson(made);
      else
        print(
          `The demonstration plant: ${made.homes} homes, ${made.sections} sections, ${made.events} events.`,
        );
    });
