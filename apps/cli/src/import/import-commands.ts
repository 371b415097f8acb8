import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';
import type { Plant } from '@libs/plant';
import { z } from 'zod';
import type { Progress } from '../progress';
import { isTelling, tellPlant } from '../telling';
import type { TellingAnswer } from '../telling';
import { PLANT_TELLINGS } from '@libs/contracts';
import type { PlantTelling } from '@libs/contracts';
import { importKey, rowMarks } from './import-key';
import type { RowMark } from './import-key';
import type { ImportSummary } from './import-summary';
import { inFlight } from './in-flight';
import { refusalsOf } from './rejected-file';
import { IMPORTER } from './tell-log';

export type CommandsImport = {
  readonly plant: Plant;
  readonly file: string;
  readonly progress: Progress;
  readonly isKeyReused: (error: unknown) => boolean;
};

/** One line of a command file. `command` is a telling's route name, `params` what its path asks for. */
const CommandLine = z.strictObject({
  command: z.string().refine(isTelling, {
    error: ({ input }) => `"${String(input)}" is no telling; there are ${[...PLANT_TELLINGS].join(', ')}`,
  }),
  key: z.string().min(8).max(80).optional(),
  actor: z.string().min(1).max(64).default(IMPORTER),
  params: z.record(z.string(), z.string()).default({}),
  body: z.looseObject({ serial: z.string().optional() }),
});
type CommandLine = z.output<typeof CommandLine>;

/** What others build on: they wait for all before them, and all after waits for them. */
const STANDS_ALONE = new Set<string>([
  'home',
  'lot',
  'mounting',
  'wrongSerial',
  'delivery',
  'complaint',
  'dismissal',
  'claimOpening',
  'asFound',
]);

/** Studbook's own commands, one JSON object a line, through the same contracts and the same door as a tablet's. */
export const importCommands = async (wish: CommandsImport): Promise<ImportSummary> => {
  const { plant, file, progress } = wish;
  const marked = rowMarks();
  const refusals = refusalsOf(file);
  const flight = inFlight();
  let line = 0;
  let rows = 0;

  const take = async (at: number, text: string): Promise<void> => {
    const mark = marked(text, '');
    const read = readLine(text);
    if (!read.ok) {
      refusals.add(at, read.reason, text);
      return;
    }

    const { command } = read;
    const tell = async (): Promise<void> => {
      const answer = await told(wish, mark, command);
      if (!answer.ok) refusals.add(at, answer.reason, text);
    };
    if (!STANDS_ALONE.has(command.command)) return flight.add(command.body.serial ?? '', tell);
    await flight.settled();
    return tell();
  };
  for await (const text of linesOf(file)) {
    line += 1;
    if (text.trim() === '') continue;
    rows += 1;
    progress.at(rows, null, 'Commands told');
    await take(line, text);
  }
  await flight.settled();
  progress.end();

  const refused = refusals.count();
  const rejectedFile = await refusals.close();
  return {
    file,
    rows,
    taken: rows - refused,
    passedOver: 0,
    refused,
    rejectedFile,
    position: await plant.head(),
  };
};

const linesOf = (file: string): AsyncIterable<string> =>
  createInterface({ input: createReadStream(file, 'utf8'), crlfDelay: Infinity });

type ReadLine =
  { readonly ok: true; readonly command: CommandLine } | { readonly ok: false; readonly reason: string };

const readLine = (text: string): ReadLine => {
  const json = parsed(text.replace(/^\uFEFF/, ''));
  if (!json.ok) return json;
  const read = CommandLine.safeParse(json.value);
  return read.success ? { ok: true, command: read.data } : { ok: false, reason: reasonIn(read.error) };
};

/** `body.serial: must be ...; ...`, in the words of the fields themselves. */
const reasonIn = ({ issues }: z.ZodError): string =>
  issues
    .map(({ path, message }) => (path.length === 0 ? message : `${path.join('.')}: ${message}`))
    .join('; ');

const parsed = (
  text: string,
): { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly reason: string } => {
  try {
    return { ok: true, value: JSON.parse(text) as unknown };
  } catch (error) {
    if (error instanceof SyntaxError) return { ok: false, reason: `not JSON: ${error.message}` };
    throw error;
  }
};

const told = async (
  { plant, isKeyReused }: CommandsImport,
  mark: RowMark,
  { command, key, actor, params, body }: CommandLine,
): Promise<TellingAnswer> => {
  const sender = { key: key ?? importKey(mark, 0), actor, assurance: 'token' } as const;
  const name: PlantTelling = command;
  try {
    return await tellPlant(plant, { name, body, sender, params });
  } catch (error) {
    if (!isKeyReused(error)) throw error;
    return { ok: false, code: 'key-reused', reason: `key ${sender.key} came before with other content` };
  }
};
