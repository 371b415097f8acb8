import { readCheckpoint, readNote } from '@libs/proof';
import { Usable } from '../exit-code';

/** How many events the ledger had at this checkpoint. Whose it is shows when it is compared. */
export const sizeOfCheckpoint = (text: string, file: string): number => {
  const checkpoint = readCheckpoint(readNote(text)?.text ?? '');
  if (checkpoint === undefined) throw new Usable(`${file} is no checkpoint, or it was changed.`);
  return checkpoint.size;
};
