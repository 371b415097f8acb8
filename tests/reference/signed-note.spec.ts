import {
  bytesOfHex,
  checkpointText,
  hexOf,
  keyFromText,
  keyText,
  readCheckpoint,
  readNote,
  signedNote,
  signingBy,
  verifierKey,
} from '@libs/proof';
import { TOOLS, fromHex, sha256, signerFrom } from '../support/proof-tools';
import ed25519 from './cases/rfc8032-vectors.json';
import vectors from './cases/signed-note-vectors.json';

const { specExample, computedHere: made } = vectors;
const signer = signerFrom(made.keyName, fromHex(made.secretKeyHex));

describe('Ed25519, RFC 8032 section 7.1', () => {
  it.each(ed25519.vectors)('$name: signs as published, and the signature verifies', (vector) => {
    const { key, sign } = signerFrom('any', fromHex(vector.secretKeyHex));
    const message = fromHex(vector.messageHex);

    expect(hexOf(key.publicKey)).toBe(vector.publicKeyHex);
    expect(hexOf(sign(message))).toBe(vector.signatureHex);
    expect(TOOLS.verify(fromHex(vector.signatureHex), message, key.publicKey)).toBe(true);
    expect(TOOLS.verify(fromHex(vector.signatureHex), Buffer.from('another'), key.publicKey)).toBe(false);
  });
});

describe('signed notes, C2SP signed-note', () => {
  it('reads the specification’s own example and finds it signed by its key', () => {
    const key = keyFromText(sha256, specExample.vkey);
    const note = readNote(specExample.note);

    expect(key && keyText(key)).toBe(specExample.vkey);
    expect(note?.text).toBe('This is an example message.\n');
    expect(note && key && signingBy(note, key, TOOLS)).toBe('signed');
  });

  it('finds the example changed by one letter not signed', () => {
    const key = keyFromText(sha256, specExample.vkey)!;
    const note = readNote(specExample.note.replace('example message', 'example massage'))!;

    expect(signingBy(note, key, TOOLS)).toBe('wrong');
  });

  it('gives a key the id and the text of the vectors', () => {
    const key = verifierKey(sha256, made.keyName, fromHex(made.publicKeyHex));

    expect(hexOf(key.id)).toBe(made.keyIdHex);
    expect(keyText(key)).toBe(made.vkey);
  });

  it.each([
    ['no blank line', 'text\n\u2014 a f6H1GHnS5g==\n'],
    ['no last newline', 'text\n\n\u2014 a f6H1GHnS5g=='],
    ['a hyphen for the dash', 'text\n\n- a f6H1GHnS5g==\n'],
    ['a carriage return', 'text\r\n\n\u2014 a f6H1GHnS5g==\n'],
    ['a signature too short to name a key', 'text\n\n\u2014 a f6E=\n'],
    ['a key name with a plus', 'text\n\n\u2014 a+b f6H1GHnS5g==\n'],
  ])('refuses a note with %s', (_what, note) => {
    expect(readNote(note)).toBeUndefined();
  });

  it('passes over signatures of keys it does not know', () => {
    const other = signerFrom('example.com/other', fromHex(ed25519.vectors[1]!.secretKeyHex));
    const note = readNote(signedNote('text\n', [other, signer]))!;

    expect(signingBy(note, signer.key, TOOLS)).toBe('signed');
    expect(signingBy(readNote(signedNote('text\n', [other]))!, signer.key, TOOLS)).toBe('not-by-this-key');
  });
});

describe('checkpoints, C2SP tlog-checkpoint', () => {
  it.each(made.checkpoints)('of $treeSize leaves is written and read as in the vectors', (vector) => {
    const origin = made.keyName;
    const text = checkpointText({ origin, size: vector.treeSize, root: bytesOfHex(vector.rootHex)! });
    const note = readNote(vector.checkpoint)!;

    expect(signedNote(text, [signer])).toBe(vector.checkpoint);
    expect(signingBy(note, signer.key, TOOLS)).toBe('signed');
    expect(readCheckpoint(note.text)).toStrictEqual({
      origin,
      size: vector.treeSize,
      root: bytesOfHex(vector.rootHex),
    });
  });

  it('finds the tampered checkpoint of the vectors not signed', () => {
    const note = readNote(made.tamperedCheckpoint.checkpoint)!;

    expect(signingBy(note, signer.key, TOOLS)).toBe('wrong');
  });

  it.each(['08', '-1', '1e3', '', '9007199254740993'])('refuses a size written as "%s"', (size) => {
    expect(readCheckpoint(`o\n${size}\nXcnaeacGWamtVZy3Ad7ZoqudgjqtL0lgz+Nw7/RgQyg=\n`)).toBeUndefined();
  });
});
