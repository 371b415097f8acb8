import type { Beliefs } from './beliefs';
import type { Cause, Factor } from './cause';
import type { SourceShares } from './sources';
import type { CauseGroup, TraceCounts } from './trace-counts';
import type { OperationRow } from './trace-rows';

/** Which homes: a group counted, a stretch of time still to be found, or all of them. */
export type Homes =
  | { readonly kind: 'group'; readonly group: CauseGroup }
  | { readonly kind: 'window' }
  | { readonly kind: 'every' };

/** A cause that may be the one, and how likely it was held before looking. */
export type Suspected = {
  readonly cause: Cause;
  readonly homes: Homes;
  readonly logPrior: number;
};

/** Factors that belong to the whole home: any operation or outside cause that has them may be meant. */
const OF_ANY_OPERATION: readonly Factor[] = ['design'];

/** Every operation and outside cause, by every factor it has here. */
export const suspectsOf = (
  counts: TraceCounts,
  operations: readonly OperationRow[],
  context: { readonly shares: SourceShares; readonly beliefs: Beliefs },
): readonly Suspected[] => {
  const groups = counts.groups.filter((group) => hasContrast(group, counts));
  const byOperation = groupBy(groups, ({ cause }) => cause.operation ?? '');
  const ofHomes = byOperation.get('') ?? [];
  const shared = ofHomes.filter(({ cause }) => OF_ANY_OPERATION.includes(cause.factor));
  const inLine = operations.flatMap(({ operation, station }) =>
    spreadOver({ operation, station, outside: null }, [...(byOperation.get(operation) ?? []), ...shared], {
      ...context.beliefs,
      share: context.shares.get(operation) ?? 0,
      windows: true,
    }),
  );
  const outside = Object.entries(context.beliefs.outside).flatMap(([cause, factors]) =>
    spreadOver(
      { operation: null, station: null, outside: cause },
      ofHomes.filter((group) => factors.includes(group.cause.factor)),
      { ...context.beliefs, share: context.shares.get(cause) ?? 0, windows: false },
    ),
  );
  return [...inLine, ...outside];
};

/** A group that holds every home in use has nothing to be compared with. */
const hasContrast = ({ cells, claimed }: CauseGroup, { strata, claimed: all }: TraceCounts): boolean => {
  const units = cells.reduce((sum, cell) => sum + cell.units + cell.partly, 0);
  return units < strata.reduce((sum, stratum) => sum + stratum.units, 0) || claimed.length < all.length;
};

type Source = Pick<Cause, 'operation' | 'station' | 'outside'>;

const spreadOver = (
  source: Source,
  groups: readonly CauseGroup[],
  held: {
    readonly share: number;
    readonly factors: Beliefs['factors'];
    readonly windows: boolean;
    readonly instrumentOut: Beliefs['instrumentOut'];
  },
): readonly Suspected[] => {
  if (held.share <= 0) return [];
  const plain: readonly Factor[] = held.windows ? ['window', 'every'] : ['every'];
  const factors = new Set<Factor>([...groups.map(({ cause }) => cause.factor), ...plain]);
  const total = [...factors].reduce((sum, factor) => sum + held.factors[factor], 0);
  const prior = (factor: Factor, among: number): number =>
    Math.log((held.share * held.factors[factor]) / total / among);
  return [
    ...groups.map((group) => ({
      cause: { ...source, factor: group.cause.factor, value: group.cause.value },
      homes: { kind: 'group', group } as const,
      logPrior: prior(group.cause.factor, group.among) + toleranceLog(group, held.instrumentOut),
    })),
    ...(held.windows ? [windowSuspect(source, prior('window', 1))] : []),
    {
      cause: { ...source, factor: 'every', value: null },
      homes: { kind: 'every' },
      logPrior: prior('every', 1),
    },
  ];
};

/** An instrument found out of tolerance is suspected more, one found in tolerance less. */
const toleranceLog = (
  { outOfTolerance }: CauseGroup,
  { spoiling, sound }: Beliefs['instrumentOut'],
): number => {
  if (outOfTolerance === undefined) return 0;
  return outOfTolerance ? Math.log(spoiling / sound) : Math.log((1 - spoiling) / (1 - sound));
};

const windowSuspect = (source: Source, logPrior: number): Suspected => ({
  cause: { ...source, factor: 'window', value: null },
  homes: { kind: 'window' },
  logPrior,
});

const groupBy = <T>(items: readonly T[], keyOf: (item: T) => string): ReadonlyMap<string, readonly T[]> => {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const group = groups.get(keyOf(item));
    if (group === undefined) groups.set(keyOf(item), [item]);
    else group.push(item);
  }
  return groups;
};
