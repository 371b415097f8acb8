import type { Words } from '@libs/judge';
import type { EventData } from './event-data';
import { findingsIn, isData, listIn, textIn, textOrNull, textsIn } from './event-data';
import type { Sayings } from './saying';
import { findingSays } from './finding-says';
import { findingsCounted } from './move-events';
import type { Names } from './names';
import type { Fill } from './say';
import { NOTHING, joined, say } from './say';
import { placesSays } from './defect-says';

/** What was asked, and what was told. */
export const workEvents: Sayings = {
  AskingCleared: (data, names) =>
    say('event.AskingCleared', { ...asked(data, names), findings: findingsCounted(findingsIn(data).length) }),
  AskingRefused: (data, names) => refused(data, names),
  StationSignedOff: (data, names) => signedOff(data, names),
  WorkRecorded: (data, names) => say('event.WorkRecorded', worked(data, names)),
  TestRecorded: (data, names) =>
    say(
      data['passed'] === true ? 'event.TestRecorded.passed' : 'event.TestRecorded.not-passed',
      worked(data, names),
    ),
  WorkWithdrawn: (data, names) => withdrawn(data, names),
  WorkCorrected: (data, names) =>
    say('event.WorkCorrected', { ...worked(data, names), reason: names.reason(textIn(data, 'reason')) }),
};

const asked = (data: EventData, names: Names): Fill => ({
  operation: names.operation(textIn(data, 'operation')),
  except: fragment('event.asked-except', textsIn(data, 'except').map(names.place), 'places'),
});

/** The first thing that refuses is said whole; how many more there are follows. */
const refused = (data: EventData, names: Names): Words => {
  const refusals = findingsIn(data).filter(({ grade }) => grade === 'refuse');
  const [first, ...more] = refusals.length > 0 ? refusals : findingsIn(data);
  return say('event.AskingRefused', {
    ...asked(data, names),
    first: first === undefined ? '' : findingSays(first, names),
    findings: findingsCounted(more.length),
  });
};

const signedOff = (data: EventData, names: Names): Words => {
  const station = names.station(textIn(data, 'station'));
  const except = listIn(data, 'except')
    .filter(isData)
    .map((one) => [names.operation(textIn(one, 'operation')), placesSays(textsIn(one, 'places'), names)])
    .map((parts) => joined(parts, ''));
  return except.length === 0
    ? say('event.StationSignedOff', { station })
    : say('event.StationSignedOff.except', { station, list: joined(except, '; ') });
};

const worked = (data: EventData, names: Names): Fill => {
  const operation = textIn(data, 'operation');
  const missing = textsIn(data, 'missing').map((id) => names.characteristic(operation, id));
  return {
    operation: names.operation(operation),
    except: fragment('event.WorkRecorded.except', textsIn(data, 'except').map(names.place), 'places'),
    missing: fragment('event.WorkRecorded.missing', missing, 'list'),
    proof: proofSays(textIn(data, 'proof')),
    moved: movedFrom(data['movedFrom']),
  };
};

const fragment = (
  key: 'event.asked-except' | 'event.WorkRecorded.except' | 'event.WorkRecorded.missing',
  items: readonly Words[],
  placeholder: string,
): Words =>
  items.length === 0
    ? NOTHING
    : say(key, { [placeholder]: joined(items, placeholder === 'places' ? ', ' : '; ') });

const proofSays = (proof: string): Words => {
  if (proof === 'seen') return say('event.proof.seen');
  return proof === 'reconstructed' ? say('event.proof.reconstructed') : NOTHING;
};

const movedFrom = (from: unknown): Words =>
  isData(from) ? say('event.WorkRecorded.moved', { serial: textIn(from, 'serial') }) : NOTHING;

const withdrawn = (data: EventData, names: Names): Words => {
  const serial = textOrNull(data, 'movedTo');
  return say(serial === null ? 'event.WorkWithdrawn' : 'event.WorkWithdrawn.moved', {
    operation: names.operation(textIn(data, 'operation')),
    reason: names.reason(textIn(data, 'reason')),
    serial: serial ?? '',
  });
};
