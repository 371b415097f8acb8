import { createHash } from 'node:crypto';
import { InvalidArgumentError, Command } from 'commander';
import { readPlant } from '../composition/read-plant';
import { Usable } from '../exit-code';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { writeOut } from '../out-file';
import { print, printJson } from '../print';

type ExportOptions = DataOptions & { readonly out: string; readonly at?: number };

export const positionOf = (text: string): number => {
  const position = Number(text);
  if (/^[1-9]\d*$/.test(text) && Number.isSafeInteger(position)) return position;
  throw new InvalidArgumentError('must be a position in the ledger, 1 or more.');
};

export const exportCommand = (): Command =>
  new Command('export')
    .description("write a home's packet: its whole history, with all that proves it")
    .argument('<serial>', "a home's serial or any of its sections'")
    .requiredOption('--out <file>', 'the ZIP to write')
    .option('--at <position>', 'as the ledger stood at this position', positionOf)
    .addOption(dataOption())
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
Examples:
  studbook export H26-1003 --out H26-1003.zip
  studbook export H26-1003 --out then.zip --at 4711

Its evidence files come out the same, byte for byte, whenever they are asked for at the same position:
--json prints {position, evidence, sha256}, evidence being the SHA-256 of their list.
Check it with: studbook verify H26-1003.zip
A running server is not disturbed.`,
    )
    .action(async (serial: string, options: ExportOptions) => {
      const made = await readPlant(folderOf(options), ({ packet }) => packet(serial, options.at ?? null));
      if (made === undefined) throw new Usable(`Nothing is recorded under ${serial}${until(options.at)}.`);

      writeOut(options.out, made.zip);
      const { position, evidence, home, events } = made;
      const sha256 = createHash('sha256').update(made.zip).digest('hex');
      if (options.json) printJson({ position, evidence, sha256 });
      else
        print(
          `${options.out}: home ${home}, ${events} events, proven up to position ${position} of the ledger.\n` +
            `Evidence ${evidence}\nCheck it with: studbook verify ${options.out}`,
        );
    });

const until = (at: number | undefined): string => (at === undefined ? '' : ` up to position ${at}`);
