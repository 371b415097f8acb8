import type { AnswerOf } from '@libs/contracts';
import { Command, Option } from 'commander';
import { readPlant } from '../composition/read-plant';
import { Usable } from '../exit-code';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { print, printJson } from '../print';

type Language = 'en' | 'es';
type TraceOptions = DataOptions & { readonly language: Language };
type Trace = AnswerOf<'trace'>;

const language = (): Option =>
  new Option('--language <language>', 'of the words').choices(['en', 'es']).default('en');

export const traceCommand = (): Command =>
  new Command('trace')
    .description('say what may have caused a claim, with the evidence for and against')
    .argument('<claim>', 'number of the claim')
    .addOption(dataOption())
    .addOption(language())
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
Examples:
  studbook trace C26-001
  studbook trace C26-001 --json | jq '.candidates[] | {rank, key, confidence}'

It only reads: a running server is not disturbed.`,
    )
    .action(async (claim: string, options: TraceOptions) => {
      const trace = await readPlant(folderOf(options), ({ asks }) => asks.trace(claim));
      if (trace === undefined) throw new Usable(`No claim ${claim} is open.`);
      if (options.json) printJson(trace);
      else print(traceText(trace, options.language));
    });

/** More are no help on a screen of text; --json has them all. */
const SHOWN = 5;
const UNITS = { home: 'homes', section: 'sections' } as const;
const SIGNS = { for: '+', against: '-', neither: ' ' } as const;

const traceText = (trace: Trace, in_: Language): string =>
  [
    `${trace.says[in_]} (${trace.claims.length} claims; ${trace.units.claimed} of ${trace.units.of} ${UNITS[trace.unit]} in use)`,
    trace.verdictSays[in_],
    ...trace.candidates
      .slice(0, SHOWN)
      .flatMap((one) => [
        '',
        `${one.rank}. ${one.says[in_]}  ${Math.round(one.confidence * 100)} %, ${one.confidenceSays[in_]}`,
        `   ${one.key}`,
        ...one.evidence.map(({ speaks, says }) => `   ${SIGNS[speaks]} ${says[in_]}`),
      ]),
    ...(trace.next === null ? [] : ['', trace.next.says[in_]]),
  ].join('\n');

type ExposureOptions = TraceOptions & { readonly cause?: string; readonly method: 'exact' | 'whole-group' };

export const exposureCommand = (): Command =>
  new Command('exposure')
    .description('list the homes that share a cause of a claim, each with its reason')
    .argument('<claim>', 'number of the claim')
    .option('--cause <key>', "key of a cause in the claim's trace; left out: the first")
    .addOption(
      new Option('--method <method>', 'known exactly, or the whole identifiable group')
        .choices(['exact', 'whole-group'])
        .default('whole-group'),
    )
    .addOption(dataOption())
    .addOption(language())
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
Examples:
  studbook exposure C26-001
  studbook exposure C26-001 --cause electric-trimmed/lot/B-10007 --method exact --json

It only reads: a running server is not disturbed.`,
    )
    .action(async (claim: string, options: ExposureOptions) => {
      const exposure = await readPlant(folderOf(options), async ({ asks }) => {
        const cause = options.cause ?? (await asks.trace(claim))?.candidates[0]?.key;
        return cause === undefined ? undefined : asks.exposure(claim, cause, options.method);
      });
      if (exposure === undefined) throw new Usable(`No such cause of a claim ${claim} is known.`);
      if (options.json) printJson(exposure);
      else print(exposureText(exposure, options.language));
    });

const exposureText = ({ says, counts, homes }: AnswerOf<'exposure'>, in_: Language): string =>
  [
    says[in_],
    `${homes.length} homes: ${counts.line} on the line, ${counts.yard} in the yard, ${counts.sold} sold`,
    ...homes.map(
      ({ home, where, reasonSays, sections }) =>
        `  ${home}  ${where.padEnd(4)}  ${reasonSays[in_]}  ${sections.join(' ')}`,
    ),
  ].join('\n');
