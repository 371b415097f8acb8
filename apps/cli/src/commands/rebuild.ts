import { Command } from 'commander';
import { assertPlant, writePlant } from '../composition/open-plant';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { print, printJson } from '../print';
import { progressTo } from '../progress';

export const rebuildCommand = (): Command =>
  new Command('rebuild')
    .description('compute every view anew from the ledger')
    .addOption(dataOption())
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
The ledger is only read; the views are thrown away and made again, to the same bytes.
Stop the server first: it keeps the same views.

Example:
  studbook rebuild --data /srv/plant`,
    )
    .action(async (options: DataOptions) => {
      assertPlant(folderOf(options));
      const progress = progressTo(process.stderr);
      const position = await writePlant(folderOf(options), async (plant) => {
        await plant.rebuild((at, head) => progress.at(at, head, 'Events read'));
        progress.end();
        return plant.head();
      });
      if (options.json) printJson({ position });
      else print(`Every view is made anew from the ledger, up to position ${position}.`);
    });
