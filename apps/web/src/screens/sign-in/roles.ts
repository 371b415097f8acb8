import type { Speech, WordKey } from '../../words/words';

const WORDS: Readonly<Record<string, WordKey>> = {
  'station-lead': 'role.station-lead',
  'quality-manager': 'role.quality-manager',
  inspector: 'role.inspector',
  'agency-inspector': 'role.agency-inspector',
  administrator: 'role.administrator',
  auditor: 'role.auditor',
  'plant-manager': 'role.plant-manager',
  installer: 'role.installer',
  machine: 'role.machine',
};

/** A role the catalogue does not know is shown by its own code. */
export const roleWord = (role: string, t: Speech['t']): string => {
  const key = WORDS[role];
  return key === undefined ? role : t(key);
};
