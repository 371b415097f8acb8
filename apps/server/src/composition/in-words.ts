import { Fault } from '@libs/ledger';
import { SettingsWrong } from './settings-wrong';

/** Faults on starting that whoever starts the server can put right. */
export const inWords = (fault: unknown): string | undefined => {
  if (fault instanceof SettingsWrong || fault instanceof Fault) return fault.message;
  if (!(fault instanceof Error) || !('code' in fault)) return undefined;

  switch (fault.code) {
    case 'EADDRINUSE':
      return `Port ${String(Reflect.get(fault, 'port'))} is in use by another program. Stop that one, or set PORT to another.`;
    case 'EACCES':
      return `Not allowed: ${fault.message}. Set STUDBOOK_DATA to a folder that may be written, PORT above 1023.`;
    case 'ENOENT':
    case 'ENOTDIR':
      return `${String(Reflect.get(fault, 'path'))} cannot be made. Set STUDBOOK_DATA to a folder that may be written.`;
    default:
      return undefined;
  }
};
