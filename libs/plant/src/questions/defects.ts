import type { AnswerOf } from '@libs/contracts';
import type { Span } from '../told';
import type { Asked } from './asked';
import { daysOf } from './days';
import { defectCard } from './defect-card';

/** More than anyone reads; a narrower filter finds the rest. */
const DEFECTS_SHOWN = 500;

/** Those of one serial are shown whenever they were found; else those of the span. */
export const defectsQuestion =
  (asked: Asked) =>
  async (only: { readonly [filter: string]: string | null }, span: Span): Promise<AnswerOf<'defects'>> => {
    const ofSerial = (only['serial'] ?? null) !== null && span.from === null && span.to === null;
    const days = ofSerial ? ALL_DAYS : await daysOf(span, asked);
    const names = asked.names.current();
    const rows = await asked.views.defects(only, days, DEFECTS_SHOWN);
    return { defects: rows.map((row) => defectCard(row, names)) };
  };

const ALL_DAYS = { from: '0000-00-00', to: '9999-99-99' };
