import { INSTANT } from '@libs/kernel';
import { base64Of, bytesOfBase64 } from './bytes';
import { HASH_BYTES } from './hashing';

/** How a ledger stood when it was so long: what gets signed, and is kept by people outside. */
export type Checkpoint = {
  /** Which log: its first line, and the name its key signs with. */
  readonly origin: string;
  /** Events in the ledger. */
  readonly size: number;
  readonly root: Uint8Array;
  /** Over the last event of every stream; absent in a checkpoint of another log than ours. */
  readonly heads?: { readonly count: number; readonly root: Uint8Array };
  /** When the last of its events was recorded. */
  readonly until?: string;
};

export const originOf = (ledger: string): string => `studbook/${ledger}`;

/** C2SP tlog-checkpoint: origin, size, root; then our two extension lines. */
export const checkpointText = ({ origin, size, root, heads, until }: Checkpoint): string =>
  [
    origin,
    String(size),
    base64Of(root),
    ...(heads === undefined ? [] : [`heads ${heads.count} ${base64Of(heads.root)}`]),
    ...(until === undefined ? [] : [`until ${until}`]),
  ]
    .map((line) => `${line}\n`)
    .join('');

/** Undefined where it does not have the form to the letter. Extension lines of others are let stand. */
export const readCheckpoint = (text: string): Checkpoint | undefined => {
  const [origin, size, encoded, ...rest] = text.endsWith('\n') ? text.slice(0, -1).split('\n') : [];
  const extensions = rest.filter((line) => line !== '');
  if (!origin || size === undefined || encoded === undefined || extensions.length < rest.length)
    return undefined;

  const [count, root] = [countOf(size), hashOf(encoded)];
  if (count === undefined || root === undefined) return undefined;

  const heads = extensions.flatMap((line) => readHeads(line) ?? [])[0];
  const until = extensions.flatMap((line) => readUntil(line) ?? [])[0];
  return {
    origin,
    size: count,
    root,
    ...(heads === undefined ? {} : { heads }),
    ...(until === undefined ? {} : { until }),
  };
};

const readHeads = (line: string): Checkpoint['heads'] => {
  const [, digits = '', encoded = ''] = /^heads (\S+) (\S+)$/.exec(line) ?? [];
  const [count, root] = [countOf(digits), hashOf(encoded)];
  return count === undefined || root === undefined ? undefined : { count, root };
};

const readUntil = (line: string): string | undefined => {
  const [, instant = ''] = /^until (\S+)$/.exec(line) ?? [];
  return INSTANT.test(instant) ? instant : undefined;
};

/** Decimal, no leading zeros, exact. */
const countOf = (digits: string): number | undefined => {
  if (!/^(?:0|[1-9]\d{0,15})$/.test(digits)) return undefined;
  const count = Number(digits);
  return Number.isSafeInteger(count) ? count : undefined;
};

const hashOf = (encoded: string): Uint8Array | undefined => {
  const bytes = bytesOfBase64(encoded);
  return bytes?.length === HASH_BYTES ? bytes : undefined;
};
