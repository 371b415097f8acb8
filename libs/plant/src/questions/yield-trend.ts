import type { AnswerOf } from '@libs/contracts';
import { share, wilson } from '@libs/quality';
import type { Days, YieldSums } from '@libs/views';
import type { Span } from '../told';
import type { Asked } from './asked';
import { daysOf, weeksOf } from './days';

type Point = AnswerOf<'yieldTrend'>['points'][number];

/** One station, week by week: weeks, because a day of a few sections is mostly noise. */
export const yieldTrendQuestion =
  (asked: Asked) =>
  async (station: string, span: Span): Promise<AnswerOf<'yieldTrend'>> => {
    const days = await daysOf(span, asked);
    const byDay = [...(await asked.views.yieldByDay(station, days))];
    return { station, ...days, points: weeksOf(days).map((week) => pointOf(week, byDay)) };
  };

const pointOf = (week: Days, byDay: readonly (readonly [string, YieldSums])[]): Point => {
  const sums = byDay.flatMap(([day, each]) => (day >= week.from && day <= week.to ? [each] : []));
  const total = (number: keyof YieldSums): number => sums.reduce((sum, each) => sum + each[number], 0);
  const firstPass = { count: total('clean'), of: total('left') };
  return {
    ...week,
    left: firstPass.of,
    clean: firstPass.count,
    cleanWithEscapes: total('cleanWithEscapes'),
    complete: total('complete'),
    nonconformances: total('nonconformances'),
    firstPass: share(firstPass),
    firstPassInterval: wilson(firstPass),
  };
};
