import type { Words } from '@libs/judge';
import { onDefect } from './defect-events';
import { placesSays } from './defect-says';
import type { EventData } from './event-data';
import { listIn, textIn, textOrNull, textsIn } from './event-data';
import type { Key } from './catalogue-en';
import type { Names } from './names';
import type { Sayings } from './saying';
import { NOTHING, counted, isKey, joined, same, say } from './say';

/** Dispositions, the inspection agency, labels and containment. */
export const releaseEvents: Sayings = {
  CauseRevised: (data, names) => {
    const operation = textOrNull(data, 'operation');
    const station = textOrNull(data, 'charged');
    if (operation === null || station === null) return say('event.CauseRevised.none', onDefect(data, names));
    return say('event.CauseRevised', {
      ...onDefect(data, names),
      operation: names.operation(operation),
      station: names.station(station),
    });
  },
  PunchListSigned: (data) =>
    counted(
      { one: 'event.PunchListSigned.one', many: 'event.PunchListSigned.many' },
      Number(textIn(data, 'items')),
    ),
  DefectDispositioned: (data, names) =>
    say(keyed('event.DefectDispositioned', textIn(data, 'disposition'), 'event.DefectDispositioned.rework'), {
      ...onDefect(data, names),
      detail: textIn(data, 'detail'),
    }),
  CoverOpened: (data, names) => coverOpened(data, names),
  StageSeen: (data, names) => say('event.StageSeen', { station: names.station(textIn(data, 'station')) }),
  RedTagPlaced: (data) => say('event.RedTagPlaced', { tag: textIn(data, 'tag'), rule: citing(data) }),
  RedTagLifted: (data) => say('event.RedTagLifted', { tag: textIn(data, 'tag') }),
  LabelRefused: (data) =>
    counted(
      { one: 'event.LabelRefused.one', many: 'event.LabelRefused.many' },
      listIn(data, 'findings').length,
      { number: textIn(data, 'number') },
    ),
  LabelReplaced: (data) =>
    say('event.LabelReplaced', { number: textIn(data, 'number'), replaces: textIn(data, 'replaces') }),
  DestinationSet: (data) => say('event.DestinationSet', { destination: textIn(data, 'destination') }),
  LabelVoided: (data) => say('event.LabelVoided', { number: textIn(data, 'number') }),
  LabelReclaimed: (data) => say('event.LabelReclaimed', { number: textIn(data, 'number') }),
  LabelTakenOff: (data) =>
    say('event.LabelTakenOff', {
      number: textIn(data, 'number'),
      serial: textIn(data, 'serial'),
      replacedBy: textIn(data, 'replacedBy'),
    }),
  LabelsReceived: (data) =>
    say('event.LabelsReceived', {
      count: textIn(data, 'count'),
      first: textIn(data, 'first'),
      last: textIn(data, 'last'),
    }),
  StationHeld: (data, names) =>
    say('event.StationHeld', {
      station: names.station(textIn(data, 'station')),
      reason: names.reason(textIn(data, 'reason')),
    }),
  StationReleased: (data, names) =>
    say('event.StationReleased', { station: names.station(textIn(data, 'station')) }),
  VisitMade: () => say('event.VisitMade'),
  ObservationMade: (data) => say('event.ObservationMade', { rule: citing(data) }),
  ObservationAnswered: () => say('event.ObservationAnswered'),
  ObservationClosed: (data) =>
    say(
      data['accepted'] === true ? 'event.ObservationClosed.accepted' : 'event.ObservationClosed.not-accepted',
    ),
  ContainmentOpened: (data) =>
    say('event.ContainmentOpened', {
      count: listIn(data, 'sections').length,
      serial: textIn(data, 'serial'),
    }),
  ContainedInspected: (data) =>
    say(data['found'] === true ? 'event.ContainedInspected.found' : 'event.ContainedInspected.clear', {
      serial: textIn(data, 'serial'),
    }),
};

const keyed = (prefix: string, aspect: string, otherwise: Key): Key => {
  const key = `${prefix}.${aspect}`;
  return isKey(key) ? key : otherwise;
};

const citing = (data: EventData): Words => {
  const rule = textOrNull(data, 'rule');
  return rule === null ? NOTHING : say('event.RedTagPlaced.rule', { rule: same(rule) });
};

const coverOpened = (data: EventData, names: Names): Words => {
  const again = [...textsIn(data, 'undone'), ...textsIn(data, 'exposed')];
  return say('event.CoverOpened', {
    operation: names.operation(textIn(data, 'operation')),
    places: placesSays(textsIn(data, 'places'), names),
    list: joined(again.map(names.operation), ', '),
  });
};
