import { holdSays } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import type { OpenHold } from '@libs/judge';
import { epochMs } from '@libs/kernel';
import { RED_TAG, STATION } from '@libs/record';
import type { SectionCard } from '@libs/views';
import type { Names } from '../names';
import type { Asked } from './asked';

export type HoldRow = AnswerOf<'holds'>['holds'][number];

/** Everything that is held, whatever it is, the oldest first. */
export const holdsQuestion = (asked: Asked) => async (): Promise<AnswerOf<'holds'>> => {
  const cards = await asked.views.heldCards();
  const rows = [
    ...cards.flatMap((card) => ofCard(card, asked)),
    ...(await ofStations(asked)),
    ...(await ofLots(asked)),
  ];
  return { now: new Date(asked.clock()).toISOString(), holds: rows.sort(oldestFirst) };
};

const oldestFirst = (one: HoldRow, other: HoldRow): number =>
  epochMs(one.since ?? '9999-01-01T00:00:00Z') - epochMs(other.since ?? '9999-01-01T00:00:00Z');

const ofCard = (card: SectionCard, { names }: Asked): readonly HoldRow[] =>
  card.holds.map((hold) => holdRow(card, hold, names.ofRevision(card.revision)));

export const holdRow = (card: SectionCard, hold: OpenHold, names: Names): HoldRow => ({
  of: card.kind,
  subject: card.serial,
  home: card.home,
  hold: hold.hold,
  reason: hold.reason,
  redTag: tagOf(hold),
  operation: hold.operation,
  defect: hold.defect,
  since: hold.since,
  station: card.station,
  stage: card.stage,
  says: holdSays(hold, names),
  goesBy: goesBy(hold),
});

/** `red-tag-T-17` wears the number T-17. */
const tagOf = ({ hold, reason }: OpenHold): string | null =>
  reason === RED_TAG ? hold.slice(RED_TAG.length + 1) : null;

/** Of a hold a rule placed, its own way out is told in its words; those who decide may release it besides. */
const goesBy = ({ reason, defect }: OpenHold): HoldRow['goesBy'] => {
  if (reason === RED_TAG) return 'agency';
  if (defect !== null) return 'verification';
  return reason === 'laid-open' ? 'record' : 'decision';
};

const NOT_A_SECTION = { home: null, redTag: null, operation: null, defect: null, stage: null } as const;

const ofStations = async ({ ledger, plans, names }: Asked): Promise<readonly HoldRow[]> => {
  const rows: HoldRow[] = [];
  for (const { id } of plans.current()?.rulebook.stations ?? []) {
    const { held } = await ledger.state(STATION, id);
    if (held === null) continue;
    rows.push({
      ...NOT_A_SECTION,
      of: 'station',
      subject: id,
      hold: held.hold,
      reason: held.reason,
      since: held.since,
      station: id,
      says: names.current().reason(held.reason),
      goesBy: 'decision',
    });
  }
  return rows;
};

/** A lot in quarantine is held by its own stream. */
const ofLots = async ({ quarantined, names }: Asked): Promise<readonly HoldRow[]> =>
  (await quarantined()).map(({ lot, reason, since }) => ({
    ...NOT_A_SECTION,
    of: 'lot',
    subject: lot,
    hold: '',
    reason,
    since,
    station: null,
    says: names.current().reason(reason),
    goesBy: 'decision',
  }));
