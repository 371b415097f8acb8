import { Fault } from '@libs/ledger';
import { LedgerContradicts, NothingToSign } from '@libs/plant';
import { Usable } from '../exit-code';
import { MappingNeeded } from '../import/import-log';
import { LogUnreadable } from '../import/log-row';
import { MappingWrong } from '../import/mapping';

/** Errors whose own words say all that somebody at the keyboard needs. */
const IN_WORDS = [
  Usable,
  MappingNeeded,
  MappingWrong,
  LogUnreadable,
  Fault,
  LedgerContradicts,
  NothingToSign,
] as const;

/** In words where the person can put it right; else with where it came from. */
export const explained = (error: unknown): string => {
  if (!(error instanceof Error)) return String(error);
  return IN_WORDS.some((kind) => error instanceof kind) ? error.message : (error.stack ?? error.message);
};
