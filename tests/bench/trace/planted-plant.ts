import { drawChances, drawClaims, drawEffect } from './claims';
import type { Effect, PlantedClaim } from './claims';
import { Dice } from './dice';
import { runLine } from './line';
import type { Line, Work } from './line';
import { KINDS, drawCause } from './planted-cause';
import type { Kind, PlantedCause } from './planted-cause';
import { drawShape } from './plant-shape';

/** An invented plant with one thing wrong, or nothing, and the claims that came of it. */
export type PlantedPlant = {
  readonly seed: number;
  readonly line: Line;
  readonly cause: PlantedCause | null;
  readonly effect: Effect;
  readonly claims: readonly PlantedClaim[];
  readonly chances: Float64Array;
  readonly signs: PlantedSigns;
};

/** How a cause shows on the records of the work it spoiled; in half the plants it does not. */
export type PlantedSigns = { readonly mark: string | null; readonly chance: number };

const NO_SIGNS: PlantedSigns = { mark: null, chance: 0 };

const NOTHING_WRONG = 1 / 3;
export const FEWEST = 3;
export const MOST = 60;
/** A cause that has hardly any of the claims is not what the question is about. */
export const DUE_LEAST = { count: 2, share: 0.3 } as const;
export const SIGN_MARKS = ['near-limit', 'reworked', 'defect'] as const;
export const SIGN_CHANCE = 0.4;
/** A bad instrument is found out of tolerance so often; a good one, all the same, so seldom. */
export const INSTRUMENT_SHOWS = 0.5;
export const INSTRUMENT_BLAMED = 0.05;

export const plantPlant = (seed: number): PlantedPlant => {
  const dice = new Dice(seed);
  const kind = dice.is(NOTHING_WRONG) ? null : dice.pick(KINDS);
  for (;;) {
    const plant = attempt(dice, seed, kind);
    if (plant !== null) return plant;
  }
};

const TRIES_A_LINE = 6;

/** One line with one cause, tried until its claims make a question; null where they do not. */
const attempt = (dice: Dice, seed: number, kind: Kind | null): PlantedPlant | null => {
  const line = runLine(dice, drawShape(dice));
  const chances = drawChances(dice, line);
  const effect = drawEffect(dice);
  const cause = kind === null ? null : drawCause(dice, line, kind);
  if (cause === null && kind !== null) return null;
  return askQuestion(dice, { seed, line, cause, effect, chances });
};

const askQuestion = (dice: Dice, plant: Omit<PlantedPlant, 'claims' | 'signs'>): PlantedPlant | null => {
  const { line, cause, effect, chances } = plant;
  const target = dice.scale(FEWEST, MOST);
  for (let tries = 0; tries < TRIES_A_LINE; tries++) {
    const claims = drawClaims(dice, line, { cause, times: effect.times, target, chances });
    if (!isQuestion(claims, cause)) continue;
    return { ...plant, claims, signs: leaveSigns(dice, line, { cause, claims }) };
  }
  return null;
};

const isQuestion = (claims: readonly PlantedClaim[], cause: PlantedCause | null): boolean => {
  if (claims.length < FEWEST || claims.length > MOST) return false;
  const due = claims.filter((claim) => claim.due).length;
  return cause === null || due >= Math.max(DUE_LEAST.count, DUE_LEAST.share * claims.length);
};

const leaveSigns = (
  dice: Dice,
  line: Line,
  { cause, claims }: { cause: PlantedCause | null; claims: readonly PlantedClaim[] },
): PlantedSigns => {
  findInstrumentsOut(dice, line);
  if (cause?.operation == null) return NO_SIGNS;
  const work = line.work[cause.operation] ?? [];
  if (cause.kind === 'missed') leaveNoRecord(work, cause.shares);
  if (cause.kind === 'instrument' && dice.is(INSTRUMENT_SHOWS)) outOfTolerance(work, cause.shares);
  if (!dice.is(0.5)) return NO_SIGNS;
  const as = dice.pick(SIGN_MARKS);
  const due = new Float64Array(line.sections.length);
  for (const claim of claims) if (claim.due) due[claim.section] = 1;
  mark(dice, work, { on: due, as, chance: SIGN_CHANCE });
  return { mark: as, chance: SIGN_CHANCE };
};

const leaveNoRecord = (work: readonly Work[], on: Float64Array): void => {
  work.forEach((one, at) => {
    if (on[at] === 1) one.recorded = false;
  });
};

const outOfTolerance = (work: readonly Work[], on: Float64Array): void => {
  work.forEach((one, at) => {
    if (on[at] === 1) one.marks.add('instrument-out');
  });
};

const findInstrumentsOut = (dice: Dice, line: Line): void => {
  line.shape.operations.forEach(({ instruments }, operation) => {
    const work = line.work[operation] ?? [];
    for (let instrument = 0; instrument < instruments; instrument++) {
      if (!dice.is(INSTRUMENT_BLAMED)) continue;
      outOfTolerance(
        work,
        Float64Array.from(work, (one) => (one.instrument === instrument ? 1 : 0)),
      );
    }
  });
};

const mark = (
  dice: Dice,
  work: readonly Work[],
  { on, as, chance }: { on: Float64Array; as: string; chance: number },
): void => {
  work.forEach((one, at) => {
    if (on[at] === 1 && dice.is(chance)) one.marks.add(as);
  });
};
