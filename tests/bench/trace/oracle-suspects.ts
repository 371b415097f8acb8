import type { Line, Work } from './line';
import { DRIFT, KINDS, MAP_WEIGHT, ON_MAP, nameOf } from './planted-cause';
import type { Kind } from './planted-cause';

/** A cause the simulator could have planted, by the odds it would have had, with who shares it as the record tells. */
export type OracleSuspect = {
  readonly kind: Kind;
  readonly key: string;
  readonly source: string;
  readonly operation: number | null;
  readonly odds: number;
  /** How much likelier this plant is to be the one drawn for such a cause than plants in general. */
  readonly presence: number;
  /** The chance that each section shares the cause; a window is several of these, each with its odds. */
  readonly shares: readonly { readonly odds: number; readonly of: Float64Array }[];
};

/** Every cause that could have been drawn, but those that no claimed section can share. */
export const oracleSuspects = (line: Line, claimed: readonly number[]): readonly OracleSuspect[] => {
  const memory = new Map<string, Shares>();
  return KINDS.flatMap((kind) =>
    sourcesOf(line, kind).flatMap(({ source, odds }) =>
      suspectsAt({ line, claimed, memory }, { kind, source, odds }),
    ),
  );
};

type Shares = readonly {
  readonly value: string | null;
  readonly odds: number;
  readonly shares: OracleSuspect['shares'];
}[];
type Context = {
  readonly line: Line;
  readonly claimed: readonly number[];
  readonly memory: Map<string, Shares>;
};

const OUTSIDE_OF: { readonly [kind in Kind]?: string } = {
  haul: 'x-road',
  installer: 'x-set',
  part: 'x-maker',
  use: 'x-use',
};

const sourcesOf = (line: Line, kind: Kind): readonly { source: string; odds: number }[] => {
  const { map, operations } = line.shape;
  const outside = OUTSIDE_OF[kind];
  if (outside !== undefined) {
    return [{ source: outside, odds: 1 }];
  }
  const named = map.filter(({ source }) => operations.some(({ id }) => id === source));
  const total = named.reduce((sum, { letter }) => sum + MAP_WEIGHT[letter], 0);
  return operations.map(({ id }) => {
    const letter = named.find(({ source }) => source === id)?.letter;
    const onMap = letter === undefined ? 0 : (ON_MAP * MAP_WEIGHT[letter]) / total;
    return { source: id, odds: onMap + (1 - ON_MAP) / operations.length };
  });
};

/** A map names about this share of the outside causes. */
const USUALLY_NAMED = 0.36;

const presenceOf = ({ shape }: Line, source: string, kind: Kind): number => {
  if (OUTSIDE_OF[kind] === undefined) return 1;
  const usual = USUALLY_NAMED + (1 - USUALLY_NAMED) * (1 - ON_MAP);
  return (shape.map.some((row) => row.source === source) ? 1 : 1 - ON_MAP) / usual;
};

const FACTOR_OF: { readonly [kind in Kind]: string } = {
  lot: 'lot',
  crew: 'crew',
  shift: 'shift',
  instrument: 'instrument',
  drift: 'window',
  design: 'design',
  missed: 'unrecorded',
  maker: 'maker',
  revision: 'revision',
  haul: 'hauler',
  installer: 'installer',
  part: 'part',
  use: 'every',
};

const suspectsAt = (
  { line, claimed, memory }: Context,
  { kind, source, odds }: { kind: Kind; source: string; odds: number },
): readonly OracleSuspect[] => {
  const found = line.shape.operations.findIndex(({ id }) => id === source);
  const operation = found < 0 ? null : found;
  if (kind === 'part') return partSuspects({ line, claimed, memory }, odds);
  return sharesOf({ line, claimed, memory }, kind, operation).map(({ value, odds: own, shares }) => ({
    kind,
    key: [source, FACTOR_OF[kind], ...(value === null ? [] : [value])].join('/'),
    source,
    operation,
    odds: odds * own,
    presence: presenceOf(line, source, kind),
    shares,
  }));
};

const partSuspects = (context: Context, odds: number): readonly OracleSuspect[] => {
  const withLots = context.line.shape.operations.flatMap(({ lotDays }, at) => (lotDays === null ? [] : [at]));
  return withLots.flatMap((operation) =>
    (['lot', 'maker'] as const).flatMap((kind) =>
      sharesOf(context, kind, operation).map(({ value, odds: own, shares }) => ({
        kind: 'part' as const,
        key: ['x-maker', kind, value ?? ''].join('/'),
        source: 'x-maker',
        operation: null,
        odds: (odds * own) / withLots.length / 2,
        presence: presenceOf(context.line, 'x-maker', 'part'),
        shares,
      })),
    ),
  );
};

const sharesOf = ({ line, claimed, memory }: Context, kind: Kind, operation: number | null): Shares => {
  const key = `${kind} ${ofHome(kind) ? '' : String(operation)}`;
  const known = memory.get(key);
  if (known !== undefined) return known;
  const all = drawn({ line, claimed }, kind, operation).filter(({ shares }) =>
    shares.some(({ of }) => claimed.some((section) => (of[section] ?? 0) > 0.2)),
  );
  memory.set(key, all);
  return all;
};

const ofHome = (kind: Kind): boolean =>
  ['design', 'revision', 'haul', 'installer', 'drift', 'use'].includes(kind);

const OF_WORK: { readonly [kind in Kind]?: ByWork } = {
  lot: { factor: 'lot', of: (work) => work.lot, isRun: true },
  maker: { factor: 'maker', of: (work) => work.maker, isRun: true },
  crew: { factor: 'crew', of: (work) => work.crew, isRun: false },
  shift: { factor: 'shift', of: (work) => work.shift, isRun: false },
  instrument: { factor: 'instrument', of: (work) => work.instrument, isRun: false },
};

const OF_HOME: { readonly [kind in Kind]?: (home: Line['homes'][number]) => number } = {
  design: (home) => home.model,
  revision: (home) => home.revision,
  haul: (home) => home.hauler,
  installer: (home) => home.installer,
};

const drawn = (
  { line, claimed }: Pick<Context, 'line' | 'claimed'>,
  kind: Kind,
  operation: number | null,
): Shares => {
  const ofWork = OF_WORK[kind];
  if (ofWork !== undefined) return byWork({ line, claimed, operation }, ofWork);
  const of = OF_HOME[kind];
  if (of !== undefined) return byHome(line, FACTOR_OF[kind], of);
  if (kind === 'missed') return unrecorded(line, operation);
  if (kind === 'drift') return stretches(line);
  return [
    {
      value: null,
      odds: 1,
      shares: [{ odds: 1, of: new Float64Array(line.sections.length).fill(1) }],
    },
  ];
};

type ByWork = {
  readonly factor: string;
  readonly of: (work: Work) => number | null;
  readonly isRun: boolean;
};

const byWork = (
  { line, claimed, operation }: Pick<Context, 'line' | 'claimed'> & { readonly operation: number | null },
  { factor, of, isRun }: ByWork,
): Shares => {
  const work = line.work[operation ?? -1] ?? [];
  const values = [...new Set(work.map(of).filter((value) => value !== null))];
  if (values.length < 2) return [];
  const pool = oddsOf(work.flatMap((one) => (one.recorded ? [of(one)] : [])));
  const odds = work.map((one, section) =>
    one.recorded ? null : oddsOfGap(line, work, { operation, section, isRun, of, factor, pool }),
  );
  const ofClaimed = new Set(
    claimed.flatMap((section) => (work[section]?.recorded === true ? [of(work[section])] : [])),
  );
  return values
    .filter((value) => ofClaimed.has(value))
    .map((value) => ({
      value: nameOf(factor, operation, value),
      odds: 1 / values.length,
      shares: [
        {
          odds: 1,
          of: Float64Array.from(work, (one, section) => {
            const gap = odds[section];
            return gap == null ? (of(one) === value ? 1 : 0) : (gap.get(value) ?? 0);
          }),
        },
      ],
    }));
};

type Odds = ReadonlyMap<number, number>;

const oddsOf = (values: readonly (number | null)[]): Odds => {
  const known = values.filter((value) => value !== null);
  const odds = new Map<number, number>();
  for (const value of known) odds.set(value, (odds.get(value) ?? 0) + 1 / known.length);
  return odds;
};

/** What was used or who worked where nothing was recorded: by the rows around it, or by the odds of the roster. */
const oddsOfGap = (
  line: Line,
  work: readonly Work[],
  at: ByWork & { readonly operation: number | null; readonly section: number; readonly pool: Odds },
): Odds => {
  if (at.factor === 'crew') return rosterOdds(line, at);
  return at.isRun ? oddsOf([nearest(work, at, -1), nearest(work, at, 1)]) : at.pool;
};

const rosterOdds = (
  line: Line,
  { operation, section }: { operation: number | null; section: number },
): ReadonlyMap<number, number> => {
  const home = line.homes[line.sections[section]?.home ?? -1];
  const planted = line.shape.operations[operation ?? -1];
  if (home === undefined || planted === undefined) return new Map();
  return new Map(planted.crewOdds(0, home.month, home.model).map((odds, crew) => [crew, odds]));
};

const nearest = (
  work: readonly Work[],
  { section, of }: { section: number; of: (work: Work) => number | null },
  step: 1 | -1,
): number | null => {
  for (let at = section + step; at >= 0 && at < work.length; at += step) {
    const one = work[at];
    if (one?.recorded === true) return of(one);
  }
  return null;
};

const byHome = (line: Line, factor: string, of: (home: Line['homes'][number]) => number): Shares => {
  const values = [...new Set(line.homes.map(of))];
  if (values.length < 2) return [];
  return values.map((value) => ({
    value: nameOf(factor, null, value),
    odds: 1 / values.length,
    shares: [
      {
        odds: 1,
        of: Float64Array.from(line.sections, ({ home }) => {
          const built = line.homes[home];
          return built !== undefined && of(built) === value ? 1 : 0;
        }),
      },
    ],
  }));
};

/** Missed for good, or only not signed: by how often this station forgets. */
const USUALLY_MISSED = 0.07;
const unrecorded = (line: Line, operation: number | null): Shares => {
  const habit = line.shape.operations[operation ?? -1]?.missing ?? 0;
  const chance = USUALLY_MISSED / (USUALLY_MISSED + habit);
  const of = Float64Array.from(line.work[operation ?? -1] ?? [], ({ recorded }) => (recorded ? 0 : chance));
  return [{ value: null, odds: 1, shares: [{ odds: 1, of }] }];
};

const stretches = (line: Line): Shares => {
  const days = (line.homes.at(-1)?.day ?? 0) + 1;
  const shares: { odds: number; of: Float64Array }[] = [];
  for (let step = 0; step < 7; step++) {
    const length = Math.max(
      7,
      days * (DRIFT.shortest + ((DRIFT.longest - DRIFT.shortest) * (step + 0.5)) / 7),
    );
    const starts = Math.min(40, Math.ceil(((days - length) / length) * 6));
    for (let start = 0; start < starts; start++) {
      const from = ((days - length) * (start + 0.5)) / starts;
      const of = Float64Array.from(line.sections, ({ home }) => {
        const day = line.homes[home]?.day ?? -1;
        return day >= from && day < from + length ? 1 : 0;
      });
      shares.push({ odds: 1 / 7 / starts, of });
    }
  }
  return [{ value: null, odds: 1, shares }];
};
