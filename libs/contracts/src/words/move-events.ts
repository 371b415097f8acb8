import type { EventData } from './event-data';
import { findingsIn, textIn, textOrNull, textsIn } from './event-data';
import type { Sayings } from './saying';
import type { Names } from './names';
import type { Words } from '@libs/judge';
import { NOTHING, counted, joined, say } from './say';

/** Ordering, and the way down the line. */
export const moveEvents: Sayings = {
  HomeOrdered: (data) =>
    counted(
      { one: 'event.HomeOrdered.one', many: 'event.HomeOrdered.many' },
      textsIn(data, 'sections').length,
      { home: textIn(data, 'home'), model: textIn(data, 'model') },
    ),
  SectionOrdered: (data) =>
    say('event.SectionOrdered', { serial: textIn(data, 'serial'), model: textIn(data, 'model') }),
  HomeStarted: (data) =>
    say('event.HomeStarted', { home: textIn(data, 'home'), revision: textIn(data, 'revision') }),
  SectionStarted: (data, names) => say('event.SectionStarted', { to: names.station(textIn(data, 'at')) }),
  SectionMoved: (data, names) => moved(data, names),
  SectionPulled: (data, names) =>
    say('event.SectionPulled', { reason: names.reason(textIn(data, 'reason')) }),
  SectionReturned: (data, names) => say('event.SectionReturned', { to: names.station(textIn(data, 'to')) }),
  SectionShipped: (data) =>
    say('event.SectionShipped', { findings: findingsCounted(findingsIn(data).length) }),
};

const moved = (data: EventData, names: Names): Words => {
  const from = textOrNull(data, 'from');
  const open = textsIn(data, 'open');
  const carried =
    open.length === 0
      ? say('event.carried.none')
      : counted({ one: 'event.carried.one', many: 'event.carried.many' }, open.length, {
          list: joined(open.map(names.operation), '; '),
        });
  return say(from === null ? 'event.SectionMoved.first' : 'event.SectionMoved', {
    from: from === null ? '' : names.station(from),
    to: names.station(textIn(data, 'to')),
    carried: joined([carried, shortages(textsIn(data, 'shortages').length)], ''),
  });
};

const shortages = (count: number): Words =>
  count === 0 ? NOTHING : counted({ one: 'event.shortages.one', many: 'event.shortages.many' }, count);

export const findingsCounted = (count: number): Words =>
  count === 0 ? NOTHING : counted({ one: 'event.findings.one', many: 'event.findings.many' }, count);
