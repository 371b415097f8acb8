import { canonicalJson } from '@libs/kernel';
import {
  base64Of,
  byBytes,
  checkpointText,
  consistencyPath,
  evidenceFiles,
  headsTree,
  hexOf,
  inclusionPath,
  originOf,
  rootAt,
  sealedPacket,
  signedNote,
  treeOver,
  utf8,
} from '@libs/proof';
import type { PacketFiles, Signer } from '@libs/proof';
import { HASHING, sha256, signerFrom } from './proof-tools';

/** A ledger without a database: what is proven is proven of bytes alone. */
export type PaperEvent = {
  readonly stream: string;
  readonly version: number;
  readonly position: number;
  readonly body: Uint8Array;
  readonly leaf: Uint8Array;
};

const LEDGER = '3f1c9a52-0000-4000-8000-000000000007';
export const PAPER_SIGNER: Signer = signerFrom(originOf(LEDGER), Buffer.alloc(32, 9));

/** So many events, of one home, its two sections, a lot, and so many other streams by turns. */
export const paperEvents = (count: number, others = 2): readonly PaperEvent[] => {
  const foreign = Array.from({ length: others }, (_, n) => `section/H${n + 2}-A`);
  const streams = ['home/H1', 'section/H1-A', 'section/H1-B', 'lot/L1', ...foreign];
  const versions = new Map<string, number>();
  return Array.from({ length: count }, (_, n) => {
    const stream = streams[(n * 7 + (n % 5)) % streams.length] ?? 'home/H1';
    const version = (versions.get(stream) ?? 0) + 1;
    versions.set(stream, version);
    const data =
      stream === 'home/H1' && version === 1 ? { sections: ['H1-A', 'H1-B'] } : { note: `event ${n}` };
    const envelope = { data, ledger: LEDGER, position: n + 1, schema: 'Told/1', stream, version };
    const body = utf8(canonicalJson(envelope));
    return { stream, version, position: n + 1, body, leaf: HASHING.leaf(body) };
  });
};

export type PaperPacket = {
  readonly files: PacketFiles;
  readonly checkpoint: string;
  /** Events of the packet, by position. */
  readonly own: readonly PaperEvent[];
};

const PAGE: PacketFiles = new Map([['page.txt', utf8('What this home is, for people.\n')]]);

type Wish = {
  readonly signer?: Signer;
  /** The size it is bridged from. */
  readonly earlier?: number;
  /** Files beside the evidence. */
  readonly beside?: PacketFiles;
};

/** As the plant makes it: evidence of home H1, a bridge from an earlier size, a page beside it, sealed. */
export const paperPacket = (
  all: readonly PaperEvent[],
  { signer = PAPER_SIGNER, earlier = 5, beside = PAGE }: Wish = {},
): PaperPacket => {
  const size = all.length;
  const tree = treeOver(
    HASHING,
    all.map(({ leaf }) => leaf),
  );
  const heads = headsTree(HASHING, headsOf(all));
  const checkpoint = checkpointOf(all, signer);
  const own = all.filter(({ stream }) => /\bH1\b|L1/.test(stream));
  const streams = [...new Set(own.map(({ stream }) => stream))].sort(byBytes);
  const evidence = evidenceFiles(sha256, {
    ledger: LEDGER,
    home: 'H1',
    position: size,
    events: own.map((event) => ({ ...event, path: inclusionPath(tree, event.position - 1, size) })),
    heads: streams.flatMap((stream) => heads.proofOf(stream) ?? []),
    also: [],
    checkpoint,
    key: signer.key,
  });
  const path = consistencyPath(tree, earlier, size).map(base64Of);
  const bridge = utf8(`${canonicalJson({ from: earlier, path, to: size })}\n`);
  const files = new Map([...evidence, ['consistency.jsonl', bridge] as const, ...beside]);
  return { files: sealedPacket({ sha256, signer }, size, files), checkpoint, own };
};

export const checkpointOf = (all: readonly PaperEvent[], signer: Signer = PAPER_SIGNER): string => {
  const tree = treeOver(
    HASHING,
    all.map(({ leaf }) => leaf),
  );
  const size = all.length;
  const heads = headsTree(HASHING, headsOf(all));
  return signedNote(
    checkpointText({
      origin: originOf(LEDGER),
      size,
      root: rootAt(tree, size),
      heads,
      until: '2026-03-02T13:30:00.000Z',
    }),
    [signer],
  );
};

const headsOf = (all: readonly PaperEvent[]) => {
  const last = new Map(all.map((event) => [event.stream, event]));
  return [...last.values()]
    .sort((a, b) => byBytes(a.stream, b.stream))
    .map(({ stream, version, position, leaf }) => ({ stream, version, position, leaf: hexOf(leaf) }));
};
