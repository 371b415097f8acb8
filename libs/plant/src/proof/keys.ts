import { NOTE_TOOLS } from '@libs/ledger';
import type { SigningKeys } from '@libs/ledger';
import { readNote, signingBy } from '@libs/proof';
import type { VerifierKey } from '@libs/proof';

/** Which of the plant's keys, past or present, signed this note. */
export const keyOfNote = (keys: SigningKeys, note: string): VerifierKey => {
  const read = readNote(note);
  const signed = keys
    .known()
    .find((key) => read !== undefined && signingBy(read, key, NOTE_TOOLS) === 'signed');
  if (signed !== undefined) return signed;
  throw new Error(
    'A checkpoint in the database is not signed by any of the plant’s keys: it was put there by somebody else, ' +
      'or the signing keys were lost. Run `studbook verify --ledger`.',
  );
};
