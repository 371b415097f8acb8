import { CHART } from '@libs/record';
import type { ChartNote } from '@libs/record';
import type { Asked } from './asked';

/** A note in clear, and who made it. */
export const chartNoteSays =
  ({ unsealed, names }: Asked, station: string) =>
  ({ note, by, at }: ChartNote): { note: string | null; by: string; at: string } => ({
    note: unsealed(note, { stream: `${CHART.name}/${station}`, field: 'note' }),
    by: names.person(by),
    at,
  });
