import { commonRelativeRisk, compareRisks, fisherExact } from '@libs/quality';
import type { Estimate, Rate, TwoByTwo } from '@libs/quality';
import type { FoundPattern } from './patterns';
import type { Weighed } from './posterior';
import type { SourceShares } from './sources';
import type { CauseGroup, TraceCounts } from './trace-counts';
import type { RecordMark } from './trace-rows';

export type Speaks = 'for' | 'against' | 'neither';

/** One thing that speaks for or against a cause, in counts a person can check. */
export type Evidence =
  | {
      readonly kind: 'association';
      readonly speaks: Speaks;
      /** Units that share the cause, and the others: claimed, of all in use. */
      readonly exposed: Rate;
      readonly others: Rate;
      /** Units that share it in part, or of which the record does not say. In neither of the two. */
      readonly partly: Rate;
      readonly rateRatio: Estimate | null;
      /** Compared within each month and model. */
      readonly stratified: Estimate | null;
      readonly p: number;
      /** Adjusted for the number of sets of homes looked at (Benjamini-Hochberg); null where it was not looked at by itself. */
      readonly adjustedP: number | null;
    }
  /** Claims of homes that do not share the cause: it cannot explain them. */
  | { readonly kind: 'unexplained'; readonly speaks: 'against'; readonly count: number; readonly of: number }
  /** Like homes that share the cause and have no complaint. */
  | {
      readonly kind: 'without-complaint';
      readonly speaks: 'against';
      readonly count: number;
      readonly of: number;
    }
  | {
      readonly kind: 'record';
      readonly speaks: Speaks;
      readonly mark: RecordMark;
      readonly claimed: Rate;
      /** The station's own habit. */
      readonly habit: Rate;
      readonly claims: readonly string[];
    }
  | {
      readonly kind: 'report';
      readonly speaks: Speaks;
      readonly pointing: readonly string[];
      readonly elsewhere: readonly string[];
      readonly against: readonly string[];
    }
  | { readonly kind: 'fault-map'; readonly speaks: Speaks; readonly named: boolean; readonly share: number }
  | { readonly kind: 'pattern'; readonly speaks: 'for' | 'against'; readonly pattern: FoundPattern }
  | { readonly kind: 'instrument'; readonly speaks: Speaks; readonly outOfTolerance: boolean };

export type EvidenceContext = {
  readonly counts: TraceCounts;
  readonly shares: SourceShares;
  readonly named: ReadonlySet<string>;
  readonly patterns: readonly FoundPattern[];
  readonly adjusted: ReadonlyMap<string, number>;
};

export const evidenceOf = (weighed: Weighed, context: EvidenceContext): readonly Evidence[] => [
  ...groupEvidence(weighed, context),
  ...reportEvidence(weighed, context),
  ...recordEvidence(weighed, context),
  ...patternEvidence(weighed, context),
  {
    kind: 'fault-map',
    named: context.named.has(weighed.suspect.source),
    speaks: context.named.has(weighed.suspect.source) ? 'for' : 'against',
    share: context.shares.get(weighed.suspect.source) ?? 0,
  },
];

const groupEvidence = (weighed: Weighed, context: EvidenceContext): readonly Evidence[] => {
  if (weighed.cells === null) return [];
  const { claimed } = context.counts;
  const { belong, partly } = weighed.suspect;
  const association = associationEvidence(weighed, weighed.cells, context);
  const unexplained = claimed.length - belong.length - partly.length;
  const { exposed } = association;
  const { outOfTolerance } = weighed;
  return [
    association,
    ...(exposed.of > exposed.count
      ? [
          {
            kind: 'without-complaint',
            speaks: 'against',
            count: exposed.of - exposed.count,
            of: exposed.of,
          } as const,
        ]
      : []),
    ...(unexplained > 0
      ? [{ kind: 'unexplained', speaks: 'against', count: unexplained, of: claimed.length } as const]
      : []),
    ...(outOfTolerance === null
      ? []
      : [{ kind: 'instrument', speaks: outOfTolerance ? 'for' : 'against', outOfTolerance } as const]),
  ];
};

/** Beyond these odds either way the counts are said to speak. */
const COUNTS_THAT_SPEAK = Math.log(2);

const associationEvidence = (
  weighed: Weighed,
  cells: CauseGroup['cells'],
  { counts, adjusted }: EvidenceContext,
): Extract<Evidence, { kind: 'association' }> => {
  const tables = tablesOf(counts, { cells, claimed: weighed.suspect.belong, partly: weighed.suspect.partly });
  const crude = tables.reduce(added, EMPTY);
  const [[a, b], [c, d]] = crude;
  const logCounts = weighed.logRatio - weighed.logSigns;
  const informative = tables.filter(([[e, f], [g, h]]) => e + f > 0 && g + h > 0 && e + g > 0);
  return {
    kind: 'association',
    speaks: logCounts > COUNTS_THAT_SPEAK ? 'for' : logCounts < -COUNTS_THAT_SPEAK ? 'against' : 'neither',
    exposed: { count: a, of: a + b },
    others: { count: c, of: c + d },
    partly: {
      count: weighed.suspect.partly.length,
      of: cells.reduce((sum, cell) => sum + cell.partly, 0),
    },
    rateRatio: a > 0 && c > 0 ? compareRisks(crude).relativeRisk : null,
    stratified: finite(informative.length > 0 ? commonRelativeRisk(informative) : null),
    p: fisherExact(crude),
    adjustedP: adjusted.get(weighed.sameHomes) ?? null,
  };
};

const finite = (estimate: Estimate | null): Estimate | null =>
  estimate !== null && [estimate.value, estimate.low, estimate.high].every(Number.isFinite) ? estimate : null;

const EMPTY: TwoByTwo = [
  [0, 0],
  [0, 0],
];

const added = ([[a, b], [c, d]]: TwoByTwo, [[e, f], [g, h]]: TwoByTwo): TwoByTwo => [
  [a + e, b + f],
  [c + g, d + h],
];

type Split = Pick<CauseGroup, 'cells' | 'claimed' | 'partly'>;

/** One table a stratum; units that belong in part are left out. */
export const tablesOf = ({ strata, claimed }: TraceCounts, split: Split): readonly TwoByTwo[] => {
  const cells = new Map(split.cells.map((cell) => [cell.stratum, cell]));
  const inStratum = (places: readonly number[], stratum: number): number =>
    places.filter((place) => claimed[place]?.stratum === stratum).length;
  return strata.map((stratum, at) => {
    const cell = cells.get(at) ?? { units: 0, partly: 0 };
    const belong = inStratum(split.claimed, at);
    const others = stratum.claimed - belong - inStratum(split.partly, at);
    return [
      [belong, cell.units - belong],
      [others, stratum.units - cell.units - cell.partly - others],
    ];
  });
};

const reportEvidence = ({ suspect }: Weighed, { counts }: EvidenceContext): readonly Evidence[] => {
  const reported = [...suspect.belong, ...suspect.partly].flatMap((place) => {
    const unit = counts.claimed[place];
    return unit === undefined
      ? []
      : unit.asFound.map((report) => ({ report, claim: unit.claims[0] ?? unit.home }));
  });
  if (reported.length === 0) return [];

  const claimsWhere = (holds: (report: (typeof reported)[number]['report']) => boolean): readonly string[] =>
    reported.filter(({ report }) => holds(report)).map(({ claim }) => claim);
  const pointing = claimsWhere(({ pointsTo }) => pointsTo.includes(suspect.source));
  const elsewhere = claimsWhere(({ pointsTo }) => pointsTo.length > 0 && !pointsTo.includes(suspect.source));
  const against = claimsWhere(({ speaksAgainst }) => speaksAgainst.includes(suspect.source));
  const balance = pointing.length - elsewhere.length - against.length;
  const speaks = balance > 0 ? 'for' : balance < 0 ? 'against' : 'neither';
  return [{ kind: 'report', speaks, pointing, elsewhere, against }];
};

const recordEvidence = ({ suspect, cause }: Weighed, { counts }: EvidenceContext): readonly Evidence[] =>
  counts.habits
    .filter(({ operation, mark }) => operation === cause.operation && mark !== 'instrument-out')
    .flatMap(({ mark, count, of }): readonly Evidence[] => {
      const marked = suspect.belong.flatMap((place) => {
        const unit = counts.claimed[place];
        const has =
          unit?.marks.some((one) => one.operation === cause.operation && one.mark === mark) === true;
        return has ? [unit.claims[0] ?? unit.home] : [];
      });
      if (marked.length === 0) return [];
      const claimed = { count: marked.length, of: suspect.belong.length };
      return [
        {
          kind: 'record',
          speaks: speaksOfMark(mark, claimed, { count, of }),
          mark,
          claimed,
          habit: { count, of },
          claims: marked,
        },
      ];
    });

/** As often again as the station's habit, and more than once, speaks; a correction is no guilt. */
const speaksOfMark = (mark: RecordMark, claimed: Rate, habit: Rate): Speaks =>
  mark !== 'corrected' && claimed.count > 1 && claimed.count / claimed.of > (2 * habit.count) / habit.of
    ? 'for'
    : 'neither';

const patternEvidence = ({ suspect }: Weighed, { patterns }: EvidenceContext): readonly Evidence[] =>
  patterns.flatMap((pattern): readonly Evidence[] => {
    if (pattern.pointsTo.includes(suspect.source)) return [{ kind: 'pattern', speaks: 'for', pattern }];
    if (pattern.speaksAgainst.includes(suspect.source))
      return [{ kind: 'pattern', speaks: 'against', pattern }];
    return [];
  });
