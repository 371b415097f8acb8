import { readNote, signedNote, signingBy } from './signed-note';
import type { Signer } from './signed-note';
import { keyFromText, keyText } from './verifier-key';
import type { NoteTools, VerifierKey } from './verifier-key';

/** From this size of the ledger on the plant signs with another key. Both keys sign that it is so. */
export type KeyChange = {
  readonly origin: string;
  readonly since: number;
  readonly from: VerifierKey;
  readonly to: VerifierKey;
};

const FIRST_LINE = 'studbook key change';

export const keyChangeNote = (origin: string, since: number, from: Signer, to: Signer): string =>
  signedNote(
    [FIRST_LINE, origin, `since ${since}`, `from ${keyText(from.key)}`, `to ${keyText(to.key)}`, ''].join(
      '\n',
    ),
    [from, to],
  );

/** Undefined unless both keys signed just this. */
export const readKeyChange = (note: string, tools: NoteTools): KeyChange | undefined => {
  const read = readNote(note);
  const change = read === undefined ? undefined : readChange(read.text, tools);
  if (read === undefined || change === undefined || read.signatures.length !== 2) return undefined;

  const bothSigned = [change.from, change.to].every((key) => signingBy(read, key, tools) === 'signed');
  return bothSigned ? change : undefined;
};

const FORM = /^studbook key change\n(\S+)\nsince (0|[1-9]\d{0,14})\nfrom (\S+)\nto (\S+)\n$/;

const readChange = (text: string, { sha256 }: NoteTools): KeyChange | undefined => {
  const [, origin, since, ...keys] = FORM.exec(text) ?? [];
  const [from, to] = keys.map((key) => keyFromText(sha256, key));
  if (origin === undefined || from === undefined || to === undefined) return undefined;
  return { origin, since: Number(since), from, to };
};

/** Whether these changes lead from one key to another, each taking over from the one before. */
export const leadsTo = (from: VerifierKey, changes: readonly KeyChange[], to: VerifierKey): boolean => {
  let key = keyText(from);
  for (const change of changes) if (keyText(change.from) === key) key = keyText(change.to);
  return key === keyText(to);
};
