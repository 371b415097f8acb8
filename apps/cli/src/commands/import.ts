import { existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { extname, join, resolve } from 'node:path';
import type { Plant } from '@libs/plant';
import { Command } from 'commander';
import { isKeyReused } from '../composition/open-plant';
import { unlessTold } from '../composition/new-plant';
import { tellMuch } from '../composition/tell-much';
import { EXIT, Usable } from '../exit-code';
import { importCommands } from '../import/import-commands';
import { importLog } from '../import/import-log';
import { summaryText } from '../import/import-summary';
import type { ImportSummary } from '../import/import-summary';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { print, printJson } from '../print';
import { progressTo } from '../progress';
import type { Progress } from '../progress';

type ImportOptions = DataOptions & { readonly mapping?: string; readonly writeRulebook?: string };

const COMMAND_FILES = new Set(['.ndjson', '.jsonl']);

export const importCommand = (): Command =>
  new Command('import')
    .description("take in real history: Studbook's own commands, or any plant's operation log")
    .argument('<file>', 'commands (.ndjson, .jsonl), a log (.csv), or a log in XES (.xes, IEEE 1849)')
    .option('--mapping <file>', 'which columns of the log mean what (YAML or JSON)')
    .option('--write-rulebook <folder>', 'write the rulebook made from the log there, to be tightened')
    .addOption(dataOption())
    .addOption(jsonOption())
    .addHelpText('after', HELP)
    .action(async (file: string, options: ImportOptions) => {
      assertFile(file);

      const progress = progressTo(process.stderr);
      const folder = folderOf(options);
      const summary = await unlessTold(folder, (told) =>
        tellMuch(
          { folder },
          async (plant) => {
            const before = await plant.head();
            const done = await importInto(plant, resolve(file), { ...options, progress }).finally(
              async () => {
                if ((await plant.head()) > 0) told();
              },
            );
            return { ...done, added: done.position - before };
          },
          (position, head) => progress.at(position, head, 'Views caught up'),
        ),
      );
      progress.end();
      tell(summary, options.json);
    });

const assertFile = (file: string): void => {
  if (!existsSync(file)) throw new Usable(`${file}: there is no such file.`);
  if (!statSync(file).isFile()) throw new Usable(`${file} is a folder; name the file to import.`);
};

type Wish = ImportOptions & { readonly progress: Progress };

const importInto = (
  plant: Plant,
  file: string,
  { mapping, writeRulebook, progress }: Wish,
): Promise<ImportSummary> =>
  COMMAND_FILES.has(extname(file).toLowerCase())
    ? importCommands({ plant, file, progress, isKeyReused })
    : importLog({
        plant,
        file,
        progress,
        isKeyReused,
        mappingFile: mapping ?? null,
        writeRulebook: (files) => writeFiles(writeRulebook, files),
      });

const tell = (summary: ImportSummary & { readonly added: number }, json: boolean): void => {
  if (json) printJson(summary);
  else print(summaryText(summary));
  process.exitCode = summary.refused > 0 ? EXIT.someRefused : EXIT.done;
};

const writeFiles = (folder: string | undefined, files: { readonly [name: string]: string }): void => {
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
};

const HELP = `
Commands, one JSON object a line:
  {"command": "work", "actor": "p-117", "body": {"serial": "H26-1003-A", "operation": "wired", "via": "paper"}}
\`command\` is a telling of the HTTP API, \`body\` what it takes. \`key\` and \`params\` are optional.

A log needs a mapping, YAML or JSON; an XES log has one by the standard's own names:
  serial: Pump No           # required: what the history is kept by
  operation: Step           # required
  time: Finished            # required
  timeFormat: dd.MM.yyyy HH:mm:ss
  zone: Europe/Berlin       # of times that do not say theirs
  station: Bench            # left out: the operation's own name
  person: Worker
  rejected: Scrap           # pieces rejected: a defect of that operation
  rework: {column: Rework, yes: [J]}
  home: Order               # what several serials belong to
  lot: Batch
  only: {column: Event, values: [end]}
  delimiter: ";"
  shippedAfter: [pack]      # operations after which it has left the plant
  plant: Pump works         # its name, where the ledger is new
  defect: {component: work, symptom: rejected}   # where your rulebook lists codes of its own

Examples:
  studbook import paper-travelers.ndjson
  studbook import pumps.csv --mapping pumps.yaml --write-rulebook ./rulebook
  studbook import bakery.xes --json

An import that was interrupted is simply started again: every row has a key of its own, and none counts twice.
Rows that cannot be taken go to FILE.rejected.csv with their line and the reason.
Exit codes: 0 all rows taken, 2 some refused, 1 failed.`;
