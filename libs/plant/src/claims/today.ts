import type { Asked } from '../questions/asked';
import { dayAt } from '../questions/days';

/** At the plant. */
export const todayAt = ({ plans, clock }: Asked): string =>
  dayAt(clock(), plans.current()?.rulebook.zone ?? 'UTC');
