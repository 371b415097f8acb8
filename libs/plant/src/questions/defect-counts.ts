import { defectSays, ruleSays } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import type { Words } from '@libs/judge';
import { pareto } from '@libs/quality';
import { CHART } from '@libs/record';
import { DEFECTS_BY } from '@libs/views';
import type { DefectsBy, DefectTally } from '@libs/views';
import { ALL_CHARTS } from '../charts';
import type { Span } from '../told';
import type { Names } from '../names';
import type { Asked } from './asked';
import { daysOf } from './days';

type Only = { readonly station: string | null; readonly class: string; readonly weigh?: string };

/** Defects counted, or what they cost, the worst first. By code where the way of counting is not known. */
export const defectCountsQuestion =
  (asked: Asked) =>
  async (by: string, only: Only, span: Span): Promise<AnswerOf<'defectCounts'>> => {
    const counted = DEFECTS_BY.find((each) => each === by) ?? 'code';
    const weigh = only.weigh === 'cost' ? 'cost' : 'count';
    const days = await daysOf(span, asked);
    const [tallies, costs] = await Promise.all([
      asked.views.defectTallies(counted, { ...only, byCode: weigh === 'cost' }, days),
      costsOf(asked),
    ]);
    const byKey = new Map(tallies.map((tally) => [keyOf(counted, tally), tally]));
    const weighed = weigh === 'cost' ? tallies.filter(({ component }) => costs.of.has(component)) : tallies;
    const names = asked.names.current();
    const { total, rows } = pareto(summed(counted, weighed, weigh === 'cost' ? costs.of : null));
    return {
      ...days,
      by: counted,
      weigh,
      currency: costs.currency,
      costs: costs.said.map((one) => ({ ...one, name: names.component(one.component) })),
      unpriced: sumOf(tallies) - sumOf(weighed),
      total,
      rows: rows.map((row) => ({ ...row, says: saysOf(counted, byKey.get(row.key), names) })),
    };
  };

type Costs = {
  readonly currency: string | null;
  readonly said: readonly { readonly component: string; readonly cost: string }[];
  readonly of: ReadonlyMap<string, number>;
};

const costsOf = async ({ ledger }: Asked): Promise<Costs> => {
  const { costs } = await ledger.state(CHART, ALL_CHARTS);
  return {
    currency: costs?.currency ?? null,
    said: costs?.costs ?? [],
    of: new Map((costs?.costs ?? []).map(({ component, cost }) => [component, Number(cost)])),
  };
};

const summed = (
  by: DefectsBy,
  tallies: readonly DefectTally[],
  costs: Costs['of'] | null,
): readonly { readonly key: string; readonly count: number }[] => {
  const sums = new Map<string, number>();
  for (const tally of tallies) {
    const key = keyOf(by, tally);
    const each = costs === null ? 1 : (costs.get(tally.component) ?? 0);
    sums.set(key, (sums.get(key) ?? 0) + tally.count * each);
  }
  return [...sums].map(([key, count]) => ({ key, count }));
};

const sumOf = (tallies: readonly DefectTally[]): number => tallies.reduce((sum, { count }) => sum + count, 0);

const keyOf = (by: DefectsBy, { component, symptom, station, operation, crew, lot }: DefectTally): string =>
  ({ code: `${component} ${symptom}`, component, symptom, station, operation, crew, lot })[by];

const UNKNOWN: Words = { en: 'not known', es: 'no se sabe' };

/** A defect that a rule opened has the operation for its component and the rule for its symptom. */
const saysOf = (by: DefectsBy, tally: DefectTally | undefined, names: Names): Words =>
  tally === undefined || keyOf(by, tally).trim() === '' ? UNKNOWN : SAYS[by](tally, names);

const SAYS: { readonly [by in DefectsBy]: (tally: DefectTally, names: Names) => Words } = {
  code: ({ component, symptom }, names) => defectSays({ component, symptom, place: null }, names),
  component: ({ component }, names) => componentSays(component, names),
  symptom: ({ symptom }, names) => ruleSays(symptom) ?? names.symptom(symptom),
  station: ({ station }, names) => names.station(station),
  operation: ({ operation }, names) => names.operation(operation),
  crew: ({ crew }, names) => names.crew(crew),
  lot: ({ lot }) => ({ en: lot, es: lot }),
};

/** A component of the catalogue, or else the operation that a rule's defect has for one. */
const componentSays = (code: string, names: Names): Words => {
  const component = names.component(code);
  return component.en === code ? names.operation(code) : component;
};
