import {
  acceptance,
  acceptanceOfLot,
  acceptancePoisson,
  CODE_LETTERS,
  codeLetter,
  INSPECTION_LEVELS,
  QUALITY_LIMITS,
  shareAccepted,
  singlePlan,
  smallestPlan,
} from '@libs/quality';
import type { InspectionLevel, QualityLimit, Severity } from '@libs/quality';
import type { Case } from '../case-file';
import { has } from '../method';
import type { Figures, Method } from '../method';

const isLevel = (text: string): text is InspectionLevel => INSPECTION_LEVELS.some((level) => level === text);
const isLimit = (text: string): text is QualityLimit => QUALITY_LIMITS.some((limit) => limit === text);

const letterOf = (lot: number, level: string): string | null => {
  if (!isLevel(level)) throw new Error(`no inspection level ${level}`);
  return codeLetter(lot, level);
};

/** The case's own table is not used to answer: the library has its own, and both have to agree. */
const letterFigures = ({ computed, input }: Case): Figures => {
  const { lookups = [] }: { lookups?: { lot: number; level: string }[] } = computed as never;
  const { table = [] }: { table?: ({ lot_from: number } & Record<string, string>)[] } = input as never;
  for (const row of table) {
    for (const level of INSPECTION_LEVELS) {
      const letter = codeLetter(row.lot_from, level);
      if (letter !== row[level]) throw new Error(`lot of ${row.lot_from} at level ${level} is ${letter}`);
    }
  }
  return { lookups: lookups.map(({ lot, level }) => ({ lot, level, code: letterOf(lot, level) })) };
};

/** Printed as "lot_1000_level_II", "lot_2_to_8_level_II". */
const printedLetters = ({ published }: Case): Figures =>
  Object.fromEntries(
    Object.keys(published).flatMap((key) => {
      const [, lot, , level] = /^lot_(\d+)(_to_\d+)?_level_(.+)$/.exec(key) ?? [];
      return lot === undefined || level === undefined ? [] : [[key, letterOf(Number(lot), level)]];
    }),
  );

const severityOf = (one: Case): Severity =>
  /tightened/.test(one.id) ? 'tightened' : /reduced/.test(one.id) ? 'reduced' : 'normal';

const planOf = (one: Case, letter: string, limit: string): readonly number[] => {
  const plan = isLimit(limit) ? singlePlan(severityOf(one), letter, limit) : null;
  if (plan === null) throw new Error(`no plan for letter ${letter} at ${limit}`);
  return [plan.size, plan.accept, plan.reject];
};

const tableFigures = (one: Case): Figures => {
  const {
    code_letters: letters = Array.from(CODE_LETTERS),
    aql_percent: limits = [...QUALITY_LIMITS],
  }: {
    code_letters?: string[];
    aql_percent?: string[];
  } = one.input as never;
  const row = (letter: string): Figures =>
    Object.fromEntries(limits.map((limit) => [limit, planOf(one, letter, limit)]));
  return { table: Object.fromEntries(letters.map((letter) => [letter, row(letter)])) };
};

const printedPlans = (one: Case): Figures =>
  Object.fromEntries(
    Object.keys(one.published).flatMap((key) => {
      const [letter, limit] = key.split('_');
      return letter === undefined || limit === undefined ? [] : [[key, planOf(one, letter, limit)]];
    }),
  );

const CHANCES = [1, 5, 10, 25, 50, 75, 90, 95, 99];

const curveFigures = ({ input, computed }: Case): Figures => {
  const {
    n,
    Ac,
    c,
    p,
    lot_for_type_A: lot,
  }: {
    n: number;
    Ac?: number;
    c?: number;
    p?: number[];
    lot_for_type_A?: number;
  } = input as never;
  const plan = { size: n, accept: Ac ?? c ?? 0 };
  const {
    p: asked,
    type_A_hypergeometric: lots = [],
  }: {
    p?: number[];
    type_A_hypergeometric?: { D: number }[];
  } = computed as never;
  const shares = asked ?? p ?? [];
  const at = Object.fromEntries(
    CHANCES.map((chance) => [String(chance), 100 * shareAccepted(plan, chance / 100)]),
  );
  return {
    p: shares,
    Pa: shares.map((share) => acceptance(plan, share)),
    Pa_binomial: shares.map((share) => acceptance(plan, share)),
    Pa_poisson: shares.map((share) => acceptancePoisson(plan, share)),
    percent_defective_at_Pa_binomial: at,
    percent_defective_at_Pa: at,
    // The plan of this case is the one for a limit of 1 %.
    producer_risk_at_aql: 1 - acceptance(plan, 0.01),
    ...(lot !== undefined && {
      type_A_hypergeometric: lots.map(({ D }) => ({ D, p: D / lot, Pa: acceptanceOfLot(plan, lot, D) })),
    }),
  };
};

type Point = { readonly p: number; readonly Pa: number };

const designed = (producer: Point, consumer: Point): Figures => {
  const [good, bad] = [producer, consumer].map(({ p, Pa }) => ({ share: p, acceptance: Pa }));
  const plan = good && bad ? smallestPlan(good, bad) : null;
  if (plan === null) throw new Error('no plan of 10 000 units or fewer');
  return {
    n: plan.size,
    Ac: plan.accept,
    Re: plan.reject,
    Pa_at_PRP: acceptance(plan, producer.p),
    Pa_at_CRP: acceptance(plan, consumer.p),
  };
};

const designFigures = ({ input, computed }: Case): Figures => {
  const { PRP, CRP }: { PRP: Point; CRP: Point } = input as never;
  const { second }: { second?: { PRP: Point; CRP: Point } } = computed as never;
  return {
    ...designed(PRP, CRP),
    ...(second && { second: { ...second, ...designed(second.PRP, second.CRP) } }),
  };
};

export const SAMPLING: readonly Method[] = [
  {
    name: 'sample size code letters',
    reads: (one) => one.computed['lookups'] !== undefined,
    figures: letterFigures,
    printed: printedLetters,
  },
  {
    name: 'single sampling table',
    reads: (one) => has(one, 'code_letters', 'aql_percent'),
    figures: tableFigures,
    printed: printedPlans,
  },
  {
    name: 'operating characteristic',
    reads: (one) => has(one, 'n') && (has(one, 'Ac') || has(one, 'c')),
    figures: curveFigures,
    // Printed points come from a curve, partly by the Poisson approximation.
    printedWithin: 0.005,
  },
  {
    name: 'sampling plan through two points',
    reads: (one) => has(one, 'PRP', 'CRP'),
    figures: designFigures,
  },
];
