import { EFFECTS, USE_DUE, rateFor } from './claims';
import type { PlantedClaim } from './claims';
import { oracleSuspects } from './oracle-suspects';
import type { OracleSuspect } from './oracle-suspects';
import { MAP_WEIGHT } from './planted-cause';
import { DUE_LEAST, INSTRUMENT_BLAMED, INSTRUMENT_SHOWS, SIGN_CHANCE, SIGN_MARKS } from './planted-plant';
import type { PlantedPlant } from './planted-plant';
import { tiesOf } from './ties';
import type { RankedKeys } from './ties';

/**
 * Ranks as one who knows how the simulator draws: the odds of every kind of cause and effect, each section's true
 * chances to be claimed, how often reports are right. Nobody in a plant knows these; it shows how far the claims
 * and records themselves can lead.
 */
export const oracleRanking = (plant: PlantedPlant): readonly RankedKeys[] => {
  const units = unitsOf(plant);
  const suspects = oracleSuspects(plant.line, units.claimedSections);
  const memory = new Map<Float64Array, readonly Trial[]>();
  const weighed = suspects.map((suspect) => weigh(plant, units, { suspect, memory }));
  const accepted = new Map<string, number>();
  weighed.forEach(({ acceptance }, at) => {
    const { kind = 'use', odds = 0 } = suspects[at] ?? {};
    accepted.set(kind, (accepted.get(kind) ?? 0) + odds * acceptance);
  });
  return tiesOf(
    weighed.map(({ log, signs, homes }, at) => {
      const { key = '', kind = 'use', odds = 0, presence = 1 } = suspects[at] ?? {};
      return { key, homes, signs, log: log + Math.log(odds * presence) - Math.log(accepted.get(kind) ?? 1) };
    }),
  );
};

const STEPS = 4;
const TIMES = [EFFECTS.small, EFFECTS.large].flatMap(([low, high]) =>
  Array.from({ length: STEPS }, (_, at) => low * (high / low) ** ((at + 0.5) / STEPS)),
);

type Units = {
  readonly unitOf: readonly number[];
  readonly chances: Float64Array;
  readonly claimed: readonly number[];
  readonly claimedSections: readonly number[];
  readonly claims: readonly (readonly PlantedClaim[])[];
};

/** Sections, or homes where claims do not say which section. */
const unitsOf = ({ line, claims, chances }: PlantedPlant): Units => {
  const unitOf = line.sections.map(({ home }, section) => (line.shape.sectionsNamed ? section : home));
  const summed = new Float64Array(line.shape.sectionsNamed ? line.sections.length : line.homes.length);
  chances.forEach((chance, section) => {
    const unit = unitOf[section] ?? 0;
    summed[unit] = (summed[unit] ?? 0) + chance;
  });
  const byUnit = new Map<number, PlantedClaim[]>();
  for (const claim of claims) {
    const unit = unitOf[claim.section] ?? 0;
    byUnit.set(unit, [...(byUnit.get(unit) ?? []), claim]);
  }
  const claimed = [...byUnit.keys()];
  return {
    unitOf,
    chances: summed,
    claimed,
    claimedSections: line.sections.flatMap((_, section) =>
      byUnit.has(unitOf[section] ?? -1) ? [section] : [],
    ),
    claims: [...byUnit.values()],
  };
};

type Trial = { readonly log: number; readonly due: readonly number[]; readonly acceptance: number };
type Weighing = { readonly suspect: OracleSuspect; readonly memory: Map<Float64Array, readonly Trial[]> };

const weigh = (
  plant: PlantedPlant,
  units: Units,
  { suspect, memory }: Weighing,
): { log: number; signs: number; homes: string; acceptance: number } => {
  const logs: number[] = [];
  const without: number[] = [];
  let acceptance = 0;
  for (const { odds, of } of suspect.shares) {
    const trials = memory.get(of) ?? trialsOf(plant, units, { suspect, shares: of });
    memory.set(of, trials);
    for (const trial of trials) {
      const own = Math.log(odds / trials.length) + trial.log + Math.log(trial.acceptance + 1e-12);
      acceptance += (odds / trials.length) * trial.acceptance;
      without.push(own);
      logs.push(own + signsLog(plant, units, { suspect, due: trial.due }));
    }
  }
  const log = logSum(logs) + instrumentLog(plant, suspect);
  return { log, signs: logSum(logs) - logSum(without), homes: homesOf(suspect, units), acceptance };
};

const homesOf = ({ kind, shares, key }: OracleSuspect, { unitOf }: Units): string => {
  if (kind === 'drift') return 'drift';
  if (kind === 'use') return key;
  let sum = 0;
  const units = new Map<number, number>();
  shares[0]?.of.forEach((share, section) => {
    const unit = unitOf[section] ?? 0;
    units.set(unit, Math.max(units.get(unit) ?? 0, share));
  });
  for (const [unit, share] of units) sum += share * ((Math.imul(unit + 7, 0x9e3779b1) >>> 0) / 4_294_967_296);
  return sum.toFixed(9);
};

const trialsOf = (
  plant: PlantedPlant,
  units: Units,
  { suspect, shares }: { suspect: OracleSuspect; shares: Float64Array },
): readonly Trial[] => {
  if (suspect.kind === 'use') {
    return [{ ...fitted(units, units.chances), due: units.claimed.map(() => USE_DUE), acceptance: 1 }];
  }
  return TIMES.map((times) => {
    return trialOf(units, raisedChances(plant, units, { times, shares }));
  });
};

const raisedChances = (
  { chances }: PlantedPlant,
  units: Units,
  { times, shares }: { times: number; shares: Float64Array },
): Float64Array => {
  const raised = Float64Array.from(units.chances);
  for (let section = 0; section < chances.length; section++) {
    const share = shares[section] ?? 0;
    if (share === 0) continue;
    const unit = units.unitOf[section] ?? 0;
    raised[unit] = (raised[unit] ?? 0) + (chances[section] ?? 0) * (times - 1) * share;
  }
  return raised;
};

const fitted = (units: Units, raised: Float64Array): { log: number } => {
  const rate = rateFor(units.claimed.length, raised);
  const sum = sumOf(raised);
  let log = -rate * sum;
  for (const unit of units.claimed) {
    const expected = rate * (raised[unit] ?? 0);
    log += Math.log(-Math.expm1(-expected)) + expected;
  }
  return { log };
};

const trialOf = (units: Units, raised: Float64Array): Trial => {
  const all = sumOf(raised);
  const usual = sumOf(units.chances);
  const due = units.claimed.map((unit) => 1 - (units.chances[unit] ?? 0) / (raised[unit] ?? 1));
  return { ...fitted(units, raised), due, acceptance: acceptanceOf(units.claimed.length, 1 - usual / all) };
};

/** The chance that enough of the claims are due to the cause for the question to be asked at all. */
const acceptanceOf = (claims: number, share: number): number => {
  const least = Math.ceil(Math.max(DUE_LEAST.count, DUE_LEAST.share * claims));
  let below = 0;
  let term = (1 - share) ** claims;
  for (let due = 0; due < least; due++) {
    below += term;
    term *= ((claims - due) / (due + 1)) * (share / Math.max(1 - share, 1e-12));
  }
  return Math.max(0, 1 - below);
};

const sumOf = (values: Float64Array): number => {
  let sum = 0;
  for (const value of values) sum += value;
  return sum;
};

type Seen = { readonly suspect: OracleSuspect; readonly due: readonly number[] };

const signsLog = (plant: PlantedPlant, units: Units, seen: Seen): number =>
  reportsLog(plant, units, seen) + marksLog(plant, units, seen);

const reportsLog = ({ line }: PlantedPlant, units: Units, { suspect, due }: Seen): number => {
  const { map, reportsRight } = line.shape;
  const total = map.reduce((sum, { letter }) => sum + MAP_WEIGHT[letter], 0);
  const usual = (source: string): number => {
    const letter = map.find((row) => row.source === source)?.letter;
    return letter === undefined ? 0 : MAP_WEIGHT[letter] / total;
  };
  let log = 0;
  units.claims.forEach((claims, at) => {
    for (const { reported } of claims) {
      if (reported === null) continue;
      const byChance = usual(reported);
      const caused = (reported === suspect.source ? reportsRight : 0) + (1 - reportsRight) * byChance;
      const chance = due[at] ?? 0;
      log += Math.log(Math.max(1e-9, chance * caused + (1 - chance) * byChance) / Math.max(byChance, 1e-9));
    }
  });
  return log;
};

const marksLog = ({ line }: PlantedPlant, units: Units, { suspect, due }: Seen): number => {
  const work = suspect.operation === null ? undefined : line.work[suspect.operation];
  const operation = line.shape.operations[suspect.operation ?? -1];
  if (work === undefined || operation === undefined) return 0;
  const habits = {
    'near-limit': operation.nearLimit,
    reworked: operation.reworked,
    defect: operation.defect,
  };
  const shown = SIGN_MARKS.map((mark) => {
    const habit = habits[mark];
    let log = 0;
    units.claims.forEach((claims, at) => {
      const one = work[claims[0]?.section ?? -1];
      if (one?.recorded !== true) return;
      const chance = (due[at] ?? 0) * SIGN_CHANCE;
      log += one.marks.has(mark) ? Math.log(chance / habit + 1 - chance) : Math.log(1 - chance);
    });
    return log;
  });
  return Math.log(0.5 + (0.5 / SIGN_MARKS.length) * shown.reduce((sum, one) => sum + Math.exp(one), 0));
};

const instrumentLog = ({ line }: PlantedPlant, { kind, operation, shares }: OracleSuspect): number => {
  if (kind !== 'instrument') return 0;
  const of = shares[0]?.of;
  const isOut = (line.work[operation ?? -1] ?? []).some(
    ({ marks, recorded }, section) => recorded && of?.[section] === 1 && marks.has('instrument-out'),
  );
  return isOut
    ? Math.log((INSTRUMENT_SHOWS + INSTRUMENT_BLAMED) / INSTRUMENT_BLAMED)
    : Math.log((1 - INSTRUMENT_SHOWS) / (1 - INSTRUMENT_BLAMED));
};

const logSum = (logs: readonly number[]): number => {
  const top = Math.max(...logs);
  return top + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - top), 0));
};
