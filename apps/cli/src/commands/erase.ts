import { randomUUID } from 'node:crypto';
import { Command } from 'commander';
import { withAccess, writePlant } from '../composition/open-plant';
import { Usable } from '../exit-code';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { print, printJson } from '../print';

export const eraseCommand = (): Command =>
  new Command('erase')
    .description('erase a person: their name and notes can never be read again; every proof still holds')
    .argument('<person>', "a person's id, or claim:ID for what the complainant of a claim said")
    .addOption(dataOption())
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
Examples:
  studbook erase p-3f2a91c0
  studbook erase claim:C-17

The key their texts are sealed under is destroyed, and all that lets them in ends. What they did stays in the record
under the opaque id; packets made before and after prove the same events. What the law keeps for the life of the home
(determinations and what was done on complaints) has keys of its own and stays, for those who may read claims.
A backup of the keys that is restored later is erased again on opening. Stop the server first, or erase on its screen.`,
    )
    .action(async (person: string, options: DataOptions) => {
      const folder = folderOf(options);
      const sender = { key: randomUUID(), actor: 'office', assurance: 'token' } as const;
      const erased = await writePlant(folder, (plant) => plant.erase(person, sender));
      if (!erased) throw new Usable(`Nobody is or was known here as ${person}.`);
      await withAccess(folder, (access) => access.withdraw(person, 'office'));
      if (options.json) printJson({ erased: person });
      else print(`${person} is erased. What they did stays in the record under that id.`);
    });
