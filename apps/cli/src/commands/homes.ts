import { Command } from 'commander';
import { readPlant } from '../composition/read-plant';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { print, printJson } from '../print';

export const homesCommand = (): Command =>
  new Command('homes')
    .description('list every home of the ledger, in the order they were ordered')
    .addOption(dataOption())
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
Example:
  studbook homes --json | jq -r '.homes[].serial'

It only reads: a running server is not disturbed.`,
    )
    .action(async (options: DataOptions) => {
      const homes = await readPlant(folderOf(options), ({ proof }) => proof.homes());
      if (options.json) printJson({ homes });
      else
        print(
          homes
            .map(({ serial, model, sections }) => `${serial}  ${model}  ${sections.join(' ')}`)
            .join('\n') || 'No home is ordered yet.',
        );
    });
