import { randomInt, randomUUID } from 'node:crypto';
import { PERSONAL_ROLES } from '@libs/contracts';
import { Command, Option } from 'commander';
import { withAccess, writePlant } from '../composition/open-plant';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { print, printJson } from '../print';

type PersonOptions = DataOptions & {
  readonly name: string;
  readonly role: string[];
  readonly crew?: string;
  readonly station: string[];
};

const PIN_DIGITS = 6;
const newPin = (): string => String(randomInt(10 ** PIN_DIGITS)).padStart(PIN_DIGITS, '0');

const collect = (value: string, before: string[]): string[] => [...before, value];

export const personCommand = (): Command =>
  new Command('person')
    .description('enroll somebody who may sign in, and print the PIN once')
    .requiredOption('--name <name>', 'the name their colleagues read; it is sealed in the record')
    .addOption(
      new Option('--role <role>', 'may be given more than once')
        .choices([...PERSONAL_ROLES])
        .argParser(collect)
        .default([])
        .makeOptionMandatory(),
    )
    .option('--crew <crew>', "one of the rulebook's crews")
    .option('--station <station>', 'where they work; may be given more than once', collect, [])
    .addOption(dataOption())
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
Example:
  studbook person --name Ada --role station-lead --crew electrical --station rough-in`,
    )
    .action(async (options: PersonOptions) => {
      const person = `p-${randomUUID().slice(0, 8)}`;
      const pin = newPin();
      const { name, role: roles, crew = null, station: stations } = options;
      await writePlant(folderOf(options), (plant) =>
        plant.enroll(
          { person, name, roles, crew, stations },
          { key: randomUUID(), actor: 'office', assurance: 'token' },
        ),
      );
      await withAccess(folderOf(options), (access) => access.addPerson(person, pin, { by: 'office' }));
      if (options.json) printJson({ person, pin });
      else print(`${name} signs in as ${person} with PIN ${pin}. It is shown only here.`);
    });
