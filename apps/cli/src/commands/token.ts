import { ROLES } from '@libs/contracts';
import { Command, Option } from 'commander';
import { assertPlant, withAccess } from '../composition/open-plant';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { print, printJson } from '../print';

export const tokenCommand = (): Command =>
  new Command('token')
    .description('make a bearer token for a program, and print it once')
    .addOption(
      new Option('--role <role>', 'what its holder may do').choices([...ROLES]).makeOptionMandatory(),
    )
    .requiredOption('--name <name>', 'what it is for, such as "torque driver at rough-in"')
    .addOption(dataOption())
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
Examples:
  studbook token --role machine --name "gauge at the test station"
  curl -H "Authorization: Bearer $(studbook token --role auditor --name audit)" http://127.0.0.1:3000/api/line

Only a hash of it is kept: whoever loses it makes another. A running server knows it at once.`,
    )
    .action(async (options: DataOptions & { readonly role: string; readonly name: string }) => {
      assertPlant(folderOf(options));
      const { role, name } = options;
      const made = await withAccess(folderOf(options), (access) =>
        access.makeToken({ role, name }, 'office'),
      );
      if (options.json) printJson({ ...made, role, name });
      else print(made.token);
    });
