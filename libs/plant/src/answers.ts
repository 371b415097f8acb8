import { findingSays, holdSays } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import type { Finding } from '@libs/judge';
import type { Envelope } from '@libs/kernel';
import { typeOf } from '@libs/ledger';
import type { Outcome } from '@libs/ledger';
import { kindOf } from './facts';
import type { UnitRef } from './wanted';
import type { Names } from './names';
import type { Workings } from './workings';

type Recorded = AnswerOf<'lot'>;
type Committed = Extract<Outcome, { readonly ok: true }>;

export const recordedAnswer = async (
  { ledger }: Workings,
  { events, repeated }: Committed,
): Promise<Recorded> => ({
  position: events[0]?.position ?? (await ledger.head()),
  events: events.map(({ position, stream, schema }) => ({ position, stream, type: typeOf(schema) })),
  repeated,
});

/** What was found, and what holds the unit now. */
export const workAnswer = async (
  workings: Workings,
  committed: Committed,
  ref: UnitRef,
): Promise<AnswerOf<'work'>> => {
  const unit = await workings.ledger.state(kindOf(ref), ref.serial);
  const names = workings.names.ofRevision(unit.revision);
  return {
    ...(await recordedAnswer(workings, committed)),
    serial: ref.serial,
    findings: committed.events
      .flatMap((event) => entryFindings(event))
      .map((found) => findingAnswer(found, names)),
    holds: unit.holds.map((hold) => ({ ...hold, says: holdSays(hold, names) })),
  };
};

export const askingAnswer = async (
  workings: Workings,
  committed: Committed,
  ref: UnitRef,
): Promise<AnswerOf<'asking'>> => {
  const { findings, holds: _holds, ...rest } = await workAnswer(workings, committed, ref);
  const isRefused = committed.events.some(({ schema }) => typeOf(schema) === 'AskingRefused');
  return { ...rest, findings, answer: isRefused ? 'refused' : 'cleared' };
};

const findingAnswer = (finding: Finding, names: Names): AnswerOf<'work'>['findings'][number] => {
  const { places, ...rest } = finding;
  return {
    ...rest,
    ...(places === undefined ? {} : { places: [...places] }),
    says: findingSays(finding, names),
  };
};

/** Events that list findings are those of entries and askings; they were judged by the record itself. */
const entryFindings = ({ data }: Envelope): readonly Finding[] =>
  Array.isArray(data['findings']) ? (data['findings'] as readonly Finding[]) : [];
