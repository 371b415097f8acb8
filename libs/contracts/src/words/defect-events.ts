import type { Words } from '@libs/judge';
import { defectSays } from './defect-says';
import type { EventData } from './event-data';
import { isFinding, textIn, textOrNull } from './event-data';
import type { Saying } from './event-says';
import { findingSays } from './finding-says';
import { holdSays } from './hold-says';
import type { Names } from './names';
import { isKey, say } from './say';

/** Defects, holds and their way out. */
export const defectEvents: { readonly [type: string]: Saying } = {
  DefectRecorded: (data, names) => found(data, names),
  ReworkDone: (data, names) => {
    const crew = textOrNull(data, 'crew');
    return crew === null
      ? say('event.ReworkDone', { defect: textIn(data, 'defect') })
      : say('event.ReworkDone.crew', { defect: textIn(data, 'defect'), crew: names.crew(crew) });
  },
  DefectVerified: (data) =>
    say(data['accepted'] === true ? 'event.DefectVerified.accepted' : 'event.DefectVerified.not-accepted', {
      defect: textIn(data, 'defect'),
    }),
  DefectClosed: (data) => byHow('event.DefectClosed', data, 'event.DefectClosed.signed'),
  HoldPlaced: (data, names) => held(data, names),
  HoldReleased: (data) => byHow('event.HoldReleased', data, 'event.HoldReleased.decided'),
};

const byHow = (
  prefix: string,
  data: EventData,
  otherwise: 'event.DefectClosed.signed' | 'event.HoldReleased.decided',
): Words => {
  const key = `${prefix}.${textIn(data, 'how')}`;
  return say(isKey(key) ? key : otherwise, { defect: textIn(data, 'defect') });
};

/** What a rule found is said in the rule's own sentence. */
const found = (data: EventData, names: Names): Words => {
  const { finding } = data;
  const charged = textOrNull(data, 'charged');
  const defect = defectSays(
    {
      component: textIn(data, 'component'),
      symptom: textIn(data, 'symptom'),
      place: textOrNull(data, 'place'),
      ...(isFinding(finding) && finding.characteristic !== undefined
        ? { characteristic: finding.characteristic }
        : {}),
    },
    names,
  );
  return say('event.DefectRecorded', {
    defect,
    charged: charged === null ? '' : say('event.DefectRecorded.charged', { station: names.station(charged) }),
  });
};

const held = (data: EventData, names: Names): Words => {
  const { finding } = data;
  if (isFinding(finding)) return say('event.HoldPlaced', { says: findingSays(finding, names) });
  return holdSays(
    {
      reason: textIn(data, 'reason'),
      operation: textOrNull(data, 'operation'),
      characteristic: textOrNull(data, 'characteristic'),
      defect: textOrNull(data, 'defect'),
    },
    names,
  );
};
