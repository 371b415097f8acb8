import { canonicalJson } from '@libs/kernel';
import { envelopeOf, sha256 } from '@libs/ledger';
import type { Sql } from '@libs/ledger';
import { CONSISTENCY, KEY_CHANGES, base64Of, keyText, packedFiles, sealedPacket, utf8 } from '@libs/proof';
import type { PacketFiles } from '@libs/proof';
import { checkpointAt } from './checkpoints';
import type { Ground } from './checkpoints';
import { evidenceOf } from './evidence';
import type { Evidence, HomeListed, PlantProof, Proving } from './plant-proof';

/** Earlier checkpoints a packet can be compared with by itself: a year of days. Others are bridged on demand. */
const BRIDGED = 366;

export const plantProof = (ground: Ground & { readonly reader: Sql }): PlantProof => {
  const { ledger, proving, reader } = ground;
  const { tree, keys } = proving;
  return {
    checkpoint: (size) => checkpointAt(ground, size),
    evidenceOf: (serial, at) => evidenceOf(ground, serial, at),
    packetOf: (evidence, others) => packetOf(proving, evidence, others),
    zipOf: async (evidence, others) => packedFiles(await packetOf(proving, evidence, others)),
    bridge: async (from, to) => bridgeLine(from, to, (await tree.consistency([from], to))[0] ?? []),
    publicKey: () => keyText(keys.signer().key),
    changeKey: async () => keys.change(await ledger.head()),
    homes: () => homesIn(reader),
  };
};

/** What proves itself stands beside the evidence, since it grows with time: bridges from earlier checkpoints, key changes. */
const packetOf = async (
  { tree, checkpoints, keys }: Proving,
  { position, files }: Evidence,
  others: PacketFiles,
): Promise<PacketFiles> => {
  const earlier = (await checkpoints.sizesUpTo(position - 1, BRIDGED)).toReversed();
  const paths = await tree.consistency(earlier, position);
  const bridges = earlier.map((from, n) => bridgeLine(from, position, paths[n] ?? []));
  const changes = keys.changes().map((note) => canonicalJson({ note }));
  const all = new Map([
    ...files,
    ...linesIn(CONSISTENCY, bridges),
    ...linesIn(KEY_CHANGES, changes),
    ...others,
  ]);
  return sealedPacket({ sha256, signer: keys.signer() }, position, all);
};

const bridgeLine = (from: number, to: number, path: readonly Uint8Array[]): string =>
  canonicalJson({ from, path: path.map(base64Of), to });

/** A file of lines, where there are any. */
const linesIn = (name: string, lines: readonly string[]): PacketFiles =>
  new Map(lines.length === 0 ? [] : [[name, utf8(lines.map((line) => `${line}\n`).join(''))]]);

const homesIn = async (reader: Sql): Promise<readonly HomeListed[]> => {
  // '0' follows '/' in every character set there is, so that this is all streams that begin with `home/`.
  const rows = await reader.query<{ readonly body: string }>(
    `SELECT body FROM event WHERE stream > 'home/' AND stream < 'home0' AND version = 1 ORDER BY position`,
  );
  return rows.map(({ body }) => {
    const { occurredAt, stream, data } = envelopeOf(body);
    const { model, sections } = data;
    return {
      serial: stream.slice('home/'.length),
      model: typeof model === 'string' ? model : '',
      sections: Array.isArray(sections) ? sections.map(String) : [],
      orderedAt: occurredAt,
    };
  });
};
