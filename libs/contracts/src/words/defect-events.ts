import type { Words } from '@libs/judge';
import type { Key } from './catalogue-en';
import { defectSays } from './defect-says';
import type { EventData } from './event-data';
import { isFinding, textIn, textOrNull } from './event-data';
import type { Sayings } from './saying';
import { holdSays } from './hold-says';
import type { Names } from './names';
import type { Fill } from './say';
import { isKey, joined, say } from './say';

/** Defects, holds and their way out. */
export const defectEvents: Sayings = {
  DefectRecorded: (data, names) => found(data, names),
  ReworkDone: (data, names) => {
    const crew = textOrNull(data, 'crew');
    return crew === null
      ? say('event.ReworkDone', onDefect(data, names))
      : say('event.ReworkDone.crew', { ...onDefect(data, names), crew: names.crew(crew) });
  },
  DefectVerified: (data, names) =>
    say(
      data['accepted'] === true ? 'event.DefectVerified.accepted' : 'event.DefectVerified.not-accepted',
      onDefect(data, names),
    ),
  DefectClosed: (data, names) =>
    say(howOf('event.DefectClosed', data, 'event.DefectClosed.signed'), onDefect(data, names)),
  HoldPlaced: (data, names) => saidHold(data, names),
  HoldReleased: (data, names) => {
    const released = say(howOf('event.HoldReleased', data, 'event.HoldReleased.decided'));
    const hold = names.hold?.(textIn(data, 'hold'));
    return hold === undefined ? released : joined([released, hold], ' ');
  },
};

/** What a hold is for. */
export const saidHold = (data: EventData, names: Names): Words =>
  holdSays(
    {
      reason: textIn(data, 'reason'),
      operation: textOrNull(data, 'operation'),
      characteristic: textOrNull(data, 'characteristic'),
      defect: textOrNull(data, 'defect'),
    },
    names,
  );

const howOf = (prefix: string, data: EventData, otherwise: Key): Key => {
  const key = `${prefix}.${textIn(data, 'how')}`;
  return isKey(key) ? key : otherwise;
};

/** The event has only the defect's id, which says nothing to anybody: what it is, where the reader knows it. */
export const onDefect = (data: EventData, names: Names): Fill => {
  const defect = names.defect?.(textIn(data, 'defect'));
  return { defect: defect === undefined ? '' : say('event.on-defect', { defect }) };
};

const found = (data: EventData, names: Names): Words => {
  const charged = textOrNull(data, 'charged');
  return say('event.DefectRecorded', {
    defect: saidDefect(data, names),
    charged: charged === null ? '' : say('event.DefectRecorded.charged', { station: names.station(charged) }),
  });
};

/** What a recorded defect is. A rule's finding knows the very value that was out. */
export const saidDefect = (data: EventData, names: Names): Words => {
  const { finding } = data;
  const characteristic = isFinding(finding) ? finding.characteristic : undefined;
  return defectSays(
    {
      component: textIn(data, 'component'),
      symptom: textIn(data, 'symptom'),
      place: textOrNull(data, 'place'),
      ...(characteristic === undefined ? {} : { characteristic }),
    },
    names,
  );
};
