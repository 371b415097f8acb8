import type { Words } from '@libs/judge';
import { changeEvents } from './change-events';
import { chartEvents } from './chart-events';
import { claimEvents } from './claim-events';
import { defectEvents } from './defect-events';
import type { EventData } from './event-data';
import { lotEvents } from './lot-events';
import { moveEvents } from './move-events';
import type { Names } from './names';
import { plantEvents } from './plant-events';
import { releaseEvents } from './release-events';
import type { Sayings } from './saying';
import { same, say } from './say';
import { revisionEvents } from './revision-events';
import { workEvents } from './work-events';

const SAYINGS: Sayings = {
  ...moveEvents,
  ...workEvents,
  ...defectEvents,
  ...lotEvents,
  ...plantEvents,
  ...releaseEvents,
  ...revisionEvents,
  ...changeEvents,
  ...chartEvents,
  ...claimEvents,
};

export const spokenEvents: readonly string[] = Object.keys(SAYINGS);

/** An event as a line of history, in the words of the floor. A type that is not known yet is shown by its name. */
export const eventSays = (type: string, data: EventData, names: Names): Words => {
  const saying = Object.hasOwn(SAYINGS, type) ? SAYINGS[type] : undefined;
  return saying === undefined ? say('event.unknown', { type: same(spaced(type)) }) : saying(data, names);
};

/** `WorkRecorded`: "Work recorded". */
const spaced = (type: string): string =>
  type.replace(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
