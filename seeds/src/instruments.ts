import type { Calibration } from '@libs/plant';
import type { RulebookFiles } from '@libs/rulebook';
import { parse } from 'csv-parse/sync';
import { z } from 'zod';

const Rows = z.array(z.object({ kind: z.string(), calibrated: z.enum(['yes', 'no']) }));

/** Readable to a tenth of a pound, as the gas test asks. Invented instruments. */
const PROPERTIES: { readonly [kind: string]: Calibration['properties'] } = {
  'gas-gauge': [{ characteristic: 'gauge-resolution', value: '0.1', unit: '[psi]' }],
};

const DAY_MS = 86_400_000;
const dayAfter = (day: string, days: number): string =>
  new Date(Date.parse(day) + days * DAY_MS).toISOString().slice(0, 'yyyy-mm-dd'.length);

/** One instrument of each kind the rulebook knows, calibrated for longer than the story lasts. */
export const demoInstruments = (files: RulebookFiles, lastDay: string): readonly Calibration[] => {
  const rows = Rows.parse(
    parse(files['instruments.csv'] ?? '', { columns: true, bom: true, skip_empty_lines: true }),
  );
  return rows.map(({ kind, calibrated }, index) => ({
    instrument: `INS-${String(101 + index)}`,
    kind,
    properties: PROPERTIES[kind] ?? [],
    dueOn: calibrated === 'yes' ? dayAfter(lastDay, 120 + 35 * index) : null,
    inTolerance: true,
  }));
};
