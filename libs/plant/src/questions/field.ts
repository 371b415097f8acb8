import type { AnswerOf } from '@libs/contracts';
import { floorDay } from '@libs/kernel';
import { kaplanMeier, meanCumulative, survivalInterval, wilson } from '@libs/quality';
import type { ClaimHistory, SurvivalStep } from '@libs/quality';
import { CLAIM, DELIVERY } from '@libs/record';
import type { Claim } from '@libs/record';
import type { Asked } from './asked';
import { daysOf } from './days';

type Field = AnswerOf<'field'>;
type Figures = Field['ages'][number];

const DAY_MS = 86_400_000;
const ALL_DAYS = { from: '0000-00-00', to: '9999-99-99' };
/** Ages a manager asks for: a month, a season, half a year, a year, and the year after. */
const AGES = [30, 90, 180, 365, 730] as const;

type HomeInUse = ClaimHistory & { readonly month: string | null };

/** Claims by age since somebody moved in, not since manufacture: homes stand unsold for months, and then nobody claims. */
export const fieldQuestion =
  (asked: Asked) =>
  async (age: number): Promise<Field> => {
    const { to: asOf } = await daysOf({ from: null, to: null }, asked);
    const homes = await homesInUse(asked, asOf);
    const months = [...new Set(homes.flatMap(({ month }) => month ?? []))].sort();
    return {
      asOf,
      age,
      homes: homes.length,
      claims: homes.reduce((sum, { events }) => sum + events.length, 0),
      overall: figuresAt(homes, age),
      ages: AGES.map((each) => figuresAt(homes, each)),
      months: months.map((month) => ({
        month,
        ...figuresAt(
          homes.filter((home) => home.month === month),
          age,
        ),
      })),
    };
  };

const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY_MS);

const homesInUse = async (asked: Asked, asOf: string): Promise<readonly HomeInUse[]> => {
  const [claimed, made] = [await claimDays(asked), await monthsMade(asked)];
  const homes: HomeInUse[] = [];
  for (const stream of await asked.streamsOf(DELIVERY.name)) {
    const home = stream.slice(DELIVERY.name.length + 1);
    const since = (await asked.ledger.state(DELIVERY, home))?.occupiedOn ?? null;
    if (since === null || since > asOf) continue;
    const events = (claimed.get(home) ?? [])
      .map((day) => daysBetween(since, day))
      .filter((at) => at >= 0)
      .sort((a, b) => a - b);
    homes.push({ month: made.get(home) ?? null, events, end: Math.max(daysBetween(since, asOf), ...events) });
  }
  return homes;
};

/** By home: the days its claims were noticed, or else received. What was looked at and is no failure is no claim. */
const claimDays = async (asked: Asked): Promise<ReadonlyMap<string, readonly string[]>> => {
  const days = new Map<string, string[]>();
  for (const stream of await asked.streamsOf(CLAIM.name)) {
    const claim = await asked.ledger.state(CLAIM, stream.slice(CLAIM.name.length + 1));
    const told = whenAndWhere(claim);
    if (told !== null) days.set(told.home, [...(days.get(told.home) ?? []), told.day]);
  }
  return days;
};

const whenAndWhere = ({ logged, opened, dismissed }: Claim): { home: string; day: string } | null => {
  const home = opened?.home ?? logged?.home ?? null;
  if (logged === null || home === null || dismissed !== null) return null;
  return { home, day: opened?.noticedOn ?? logged.receivedOn };
};

/** The month its first label went on: the date of manufacture (24 CFR 3282.7(h)). */
const monthsMade = async ({ views }: Asked): Promise<ReadonlyMap<string, string>> => {
  const months = new Map<string, string>();
  for (const { home, labelledAt } of await views.labelledBetween(ALL_DAYS)) {
    const month = labelledAt === null ? undefined : floorDay(labelledAt).slice(0, '2026-03'.length);
    const known = months.get(home);
    if (month !== undefined && (known === undefined || month < known)) months.set(home, month);
  }
  return months;
};

/**
 * No figure for an age that no home has reached: that would be a guess. Where nobody has claimed, Greenwood's error
 * is nought, which is no certainty: Wilson's interval of none of them stands in.
 */
const figuresAt = (homes: readonly HomeInUse[], age: number): Figures => {
  const watched = homes.filter(({ end }) => end >= age).length;
  const counts = {
    age,
    homes: homes.length,
    watched,
    claims: homes.reduce((sum, { events }) => sum + events.filter((at) => at <= age).length, 0),
  };
  const nothing = { claimed: null, interval: { low: null, high: null }, mean: null, meanError: null };
  if (watched === 0) return { ...counts, ...nothing };

  const first = kaplanMeier(
    homes.map(({ events: [at], end }) => ({ time: at ?? end, event: at !== undefined })),
  );
  const step = first.filter(({ time }) => time <= age).at(-1);
  return {
    ...counts,
    claimed: step === undefined ? 0 : 1 - step.survival,
    interval: step === undefined ? wilson({ count: 0, of: watched }) : rangeOf(step),
    ...allClaims(homes, age),
  };
};

const allClaims = (homes: readonly HomeInUse[], age: number): Pick<Figures, 'mean' | 'meanError'> => {
  const step = meanCumulative(homes)
    .filter(({ time }) => time <= age)
    .at(-1);
  return { mean: step?.mean ?? 0, meanError: step?.robustError ?? null };
};

/** On the log-log scale, which keeps within 0 and 1; not defined once every home has claimed. */
const rangeOf = (step: SurvivalStep): Figures['interval'] => {
  if (step.survival === 0) return { low: null, high: null };
  const { low, high } = survivalInterval(step, 'log-log');
  return { low: 1 - high, high: 1 - low };
};
