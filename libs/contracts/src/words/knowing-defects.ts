import type { Words } from '@libs/judge';
import { saidDefect, saidHold } from './defect-events';
import type { EventData } from './event-data';
import { textIn } from './event-data';
import type { Names } from './names';

/** Names that know what each defect of a history is, so that its rework and its release can be spoken of. */
export const knowingDefects = (
  names: Names,
  history: Iterable<{ readonly type: string; readonly data: EventData }>,
): Names => {
  const said = new Map<string, Words>();
  const held = new Map<string, Words>();
  for (const { type, data } of history) {
    if (type === 'DefectRecorded') said.set(textIn(data, 'defect'), saidDefect(data, names));
    if (type === 'HoldPlaced') held.set(textIn(data, 'hold'), saidHold(data, names));
  }
  return { ...names, defect: (id) => said.get(id), hold: (id) => held.get(id) };
};
