import { defectSays, ruleSays } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import type { Words } from '@libs/judge';
import { pareto } from '@libs/quality';
import { DEFECTS_BY } from '@libs/views';
import type { DefectsBy, DefectTally } from '@libs/views';
import type { Span } from '../told';
import type { Names } from '../names';
import type { Asked } from './asked';
import { daysOf } from './days';

/** Defects counted, the worst first. By code where the way of counting is not known. */
export const defectCountsQuestion =
  (asked: Asked) =>
  async (
    by: string,
    only: { readonly station: string | null; readonly class: string },
    span: Span,
  ): Promise<AnswerOf<'defectCounts'>> => {
    const counted = DEFECTS_BY.find((each) => each === by) ?? 'code';
    const days = await daysOf(span, asked);
    const tallies = await asked.views.defectTallies(counted, only, days);
    const byKey = new Map(tallies.map((tally) => [keyOf(counted, tally), tally]));
    const names = asked.names.current();
    const { total, rows } = pareto([...byKey].map(([key, { count }]) => ({ key, count })));
    return {
      ...days,
      by: counted,
      total,
      rows: rows.map((row) => ({ ...row, says: saysOf(counted, byKey.get(row.key), names) })),
    };
  };

const keyOf = (by: DefectsBy, { component, symptom, station, operation }: DefectTally): string =>
  ({ code: `${component} ${symptom}`, component, symptom, station, operation })[by];

const UNKNOWN: Words = { en: 'not known', es: 'no se sabe' };

/** A defect that a rule opened has the operation for its component and the rule for its symptom. */
const saysOf = (by: DefectsBy, tally: DefectTally | undefined, names: Names): Words => {
  if (tally === undefined || keyOf(by, tally).trim() === '') return UNKNOWN;
  const { component, symptom, station, operation } = tally;
  switch (by) {
    case 'code':
      return defectSays({ component, symptom, place: null }, names);
    case 'component':
      return componentSays(component, names);
    case 'symptom':
      return ruleSays(symptom) ?? names.symptom(symptom);
    case 'station':
      return names.station(station);
    case 'operation':
      return names.operation(operation);
  }
};

/** A component of the catalogue, or else the operation that a rule's defect has for one. */
const componentSays = (code: string, names: Names): Words => {
  const component = names.component(code);
  return component.en === code ? names.operation(code) : component;
};
