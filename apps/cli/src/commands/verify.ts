import { Command, Option } from 'commander';
import { judgeLedger } from '../composition/judge-ledger';
import { judgePacket } from '../composition/judge-packet';
import type { GivenToCompare, Judged } from '../composition/judge-packet';
import { EXIT, Usable } from '../exit-code';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { print, printJson } from '../print';
import { progressTo } from '../progress';

type Language = 'en' | 'es';
type VerifyOptions = DataOptions & GivenToCompare & { readonly language: Language; readonly ledger: boolean };

export const verifyCommand = (): Command =>
  new Command('verify')
    .description('say what a packet proves and what it does not, or whether the whole ledger is unedited')
    .argument('[packet]', 'a ZIP that `studbook export` wrote, or the folder it was unpacked to')
    .option('--checkpoint <file>', 'an earlier checkpoint you hold: was anything before it changed?')
    .option(
      '--key <key>',
      "the plant's public key, as text or in a file, got another way than by this packet",
    )
    .option(
      '--bridge <file>',
      'what `studbook checkpoint --since` wrote, for a checkpoint the packet has none for',
    )
    .option('--ledger', 'derive the whole ledger anew from its database, instead of a packet', false)
    .addOption(dataOption())
    .addOption(new Option('--language <language>', 'of the words').choices(['en', 'es']).default('en'))
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
Examples:
  studbook verify H26-1003.zip
  studbook verify H26-1003.zip --checkpoint 2026-03-02.txt
  studbook verify --ledger --data /srv/plant

A packet needs no plant, no server and no network. Exit code 0 only when all of it is proven.`,
    )
    .action(async (packet: string | undefined, options: VerifyOptions) => {
      const judged = await judge(packet, options);
      if (options.json) printJson(judged);
      else print(judgedText(judged, options.language));
      if (!judged.proven) process.exitCode = EXIT.failed;
    });

const judge = async (packet: string | undefined, options: VerifyOptions): Promise<Judged> => {
  if (packet !== undefined && !options.ledger) return judgePacket(packet, options);
  if (packet !== undefined || !options.ledger)
    throw new Usable('Name one thing to verify: a packet, or --ledger.');

  const progress = progressTo(process.stderr);
  try {
    return await judgeLedger(folderOf(options), (at, head) => progress.at(at, head, 'Events verified'));
  } finally {
    progress.end();
  }
};

const TITLES = {
  failed: { en: 'WRONG', es: 'MAL' },
  proven: { en: 'PROVEN', es: 'PROBADO' },
  open: { en: 'NOT SHOWN BY THIS', es: 'ESTO NO LO MUESTRA' },
} as const;

const VERDICTS = {
  yes: { en: 'All of it is proven.', es: 'Todo está probado.' },
  no: { en: 'It is not proven: see what is wrong.', es: 'No está probado: vea lo que está mal.' },
} as const;

const judgedText = ({ proven, outcomes }: Judged, language: Language): string => {
  const parts = (['failed', 'proven', 'open'] as const).flatMap((is) => {
    const said = outcomes.filter((outcome) => outcome.is === is).map(({ says }) => `  ${says[language]}`);
    return said.length === 0 ? [] : [TITLES[is][language], ...said, ''];
  });
  return [...parts, VERDICTS[proven ? 'yes' : 'no'][language]].join('\n');
};
