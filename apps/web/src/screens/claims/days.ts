import { useMemo } from 'react';
import { useTimes } from '../../words/use-times';

/** A day without a time in it, in the reader's words: noon in Greenwich is that day in every zone of a plant. */
export const useDay = (): ((day: string) => string) => {
  const times = useTimes();
  return useMemo(() => (day: string) => times.day(`${day}T12:00:00Z`), [times]);
};

/** As this device has it: only what a field for a day starts with. */
export const today = (): string => {
  const now = new Date();
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${String(now.getFullYear())}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};
