import { textIn, textOrNull } from './event-data';
import type { Sayings } from './saying';
import { say } from './say';

/** Lots, instruments and labels. */
export const lotEvents: Sayings = {
  LotReceived: (data, names) =>
    say('event.LotReceived', { lot: textIn(data, 'lot'), kind: names.lotKind(textIn(data, 'kind')) }),
  LotQuarantined: (data, names) =>
    say('event.LotQuarantined', { lot: textIn(data, 'lot'), reason: names.reason(textIn(data, 'reason')) }),
  LotReleased: (data) => say('event.LotReleased', { lot: textIn(data, 'lot') }),
  LotMounted: (data, names) => {
    const replaces = textOrNull(data, 'replaces');
    return say(replaces === null ? 'event.LotMounted' : 'event.LotMounted.replaces', {
      kind: names.lotKind(textIn(data, 'kind')),
      lot: textIn(data, 'lot'),
      station: names.station(textIn(data, 'station')),
      replaces: replaces ?? '',
    });
  },
  LotUnmounted: (data, names) =>
    say('event.LotUnmounted', {
      kind: names.lotKind(textIn(data, 'kind')),
      lot: textIn(data, 'lot'),
      station: names.station(textIn(data, 'station')),
    }),
  InstrumentCalibrated: (data, names) => {
    const day = textOrNull(data, 'dueOn');
    return say(
      data['inTolerance'] === true ? 'event.InstrumentCalibrated.in' : 'event.InstrumentCalibrated.out',
      {
        kind: names.instrumentKind(textIn(data, 'kind')),
        instrument: textIn(data, 'instrument'),
        due: day === null ? '' : say('event.InstrumentCalibrated.due', { day }),
      },
    );
  },
  LabelAffixed: (data) => say('event.LabelAffixed', { number: textIn(data, 'number') }),
  LabelUsed: (data) =>
    say('event.LabelUsed', { number: textIn(data, 'number'), serial: textIn(data, 'serial') }),
};
