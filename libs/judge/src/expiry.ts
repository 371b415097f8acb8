import { daysBetween } from '@libs/kernel';

/** What runs out is told of so many days ahead: time to send a gauge away and get it back. */
export const WARN_DAYS = 14;

/** Still good today, and not for long. Past its last day it is a hold, and never a refusal. */
export const runsOutSoon = (today: string, lastDay: string): boolean => {
  const left = daysBetween(today, lastDay);
  return left >= 0 && left <= WARN_DAYS;
};
