import type { AnswerOf } from '@libs/contracts';
import { epochMs } from '@libs/kernel';
import type { FoundRow } from '@libs/views';
import type { Asked } from './asked';

type Found = AnswerOf<'stationChart'>['found'];

const DAY_MS = 86_400_000;

/** What a station let through, by where it was found: how many stations later, how many days later. */
export const foundWhere = (rows: readonly FoundRow[], station: string, { plans, names }: Asked): Found => {
  const line = (plans.current()?.rulebook.stations ?? [])
    .filter(({ kind }) => kind === 'line')
    .map(({ id }) => id);
  const here = line.indexOf(station);
  const places = new Map<string | null, FoundRow[]>();
  for (const row of rows) places.set(row.foundAt, [...(places.get(row.foundAt) ?? []), row]);
  return [...places]
    .map(([at, found]) => ({
      at,
      name: at === null ? null : names.current().station(at),
      stationsLater: at === null || here < 0 || !line.includes(at) ? null : line.indexOf(at) - here,
      count: found.length,
      daysLater: median(found.flatMap(daysAfterLeaving)),
    }))
    .sort((a, b) => (a.stationsLater ?? Infinity) - (b.stationsLater ?? Infinity) || b.count - a.count);
};

const daysAfterLeaving = ({ occurredAt, leftAt }: FoundRow): readonly number[] => {
  const days = leftAt === null ? -1 : (epochMs(occurredAt) - epochMs(leftAt)) / DAY_MS;
  return days > 0 ? [days] : [];
};

const median = (values: readonly number[]): number | null => {
  const ordered = [...values].sort((a, b) => a - b);
  const [low, high] = [ordered[Math.ceil(ordered.length / 2) - 1], ordered[Math.floor(ordered.length / 2)]];
  return low === undefined || high === undefined ? null : (low + high) / 2;
};
