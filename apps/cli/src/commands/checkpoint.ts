import { existsSync, readFileSync } from 'node:fs';
import { Command } from 'commander';
import { sizeOfCheckpoint } from '../composition/checkpoint-file';
import { readPlant } from '../composition/read-plant';
import { Usable } from '../exit-code';
import { dataOption, folderOf, jsonOption } from '../options';
import type { DataOptions } from '../options';
import { writeOut } from '../out-file';
import { print, printJson } from '../print';
import { positionOf } from './export';

type CheckpointOptions = DataOptions & {
  readonly out?: string;
  readonly at?: number;
  readonly since?: string;
  readonly changeKey: boolean;
};

export const checkpointCommand = (): Command =>
  new Command('checkpoint')
    .description('sign how the ledger stands, for people outside to keep')
    .option('--out <file>', 'write it to a file too')
    .option('--at <position>', 'as the ledger stood at this position', positionOf)
    .option(
      '--since <file>',
      'print the bridge from this earlier checkpoint instead: that the ledger only grew since',
    )
    .option('--change-key', 'sign with a new key from now on; both keys sign the change', false)
    .addOption(dataOption())
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `
Whoever holds a checkpoint can later show whether anything recorded before it was changed.
Send it out of the plant: to the agency, by post, into a mailbox nobody here can edit.

Examples:
  studbook checkpoint --out 2026-03-02.txt
  studbook verify H26-1003.zip --checkpoint 2026-03-02.txt
  studbook checkpoint --since 2021-03-02.txt --out bridge.jsonl

The signing key lies in keys/signing of the data folder. Back it up apart from the database, and let nobody read it.`,
    )
    .action(async (options: CheckpointOptions) => {
      if (options.changeKey) return changeKey(options);
      if (options.since !== undefined) return bridge(options, options.since);

      const made = await readPlant(folderOf(options), async ({ proof }) => ({
        ...(await proof.checkpoint(options.at)),
        publicKey: proof.publicKey(),
      }));
      if (options.out !== undefined) writeOut(options.out, made.note);
      if (options.json) printJson({ ...made, out: options.out ?? null });
      else print(made.note.trimEnd());
    });

const changeKey = async (options: CheckpointOptions): Promise<void> => {
  const changed = await readPlant(folderOf(options), async ({ proof }) => {
    // How the ledger stands is signed by the old key first: from there on the new one goes on.
    await proof.checkpoint();
    return { note: await proof.changeKey(), publicKey: proof.publicKey() };
  });
  if (options.out !== undefined) writeOut(options.out, changed.note);
  if (options.json) printJson(changed);
  else print(`${changed.note.trimEnd()}\n\nPublish the new key: ${changed.publicKey}`);
};

const bridge = async (options: CheckpointOptions, since: string): Promise<void> => {
  if (!existsSync(since)) throw new Usable(`There is no file ${since}.`);
  const from = sizeOfCheckpoint(readFileSync(since, 'utf8'), since);
  const line = await readPlant(folderOf(options), async ({ proof }) => {
    const { size } = await proof.checkpoint(options.at);
    if (from > size) throw new Usable(`${since} is of ${from} events; the ledger had ${size}.`);
    return proof.bridge(from, size);
  });
  if (options.out !== undefined) writeOut(options.out, `${line}\n`);
  print(line);
};
