import { RANKERS } from './trial';
import type { Ranker, Trial } from './trial';

/** Claims, from and below. */
const CLAIM_BANDS = [
  { name: '3-5', below: 6 },
  { name: '6-11', below: 12 },
  { name: '12-24', below: 25 },
  { name: '25-60', below: Infinity },
] as const;

const bandOf = ({ claims }: Trial): string => CLAIM_BANDS.find(({ below }) => claims < below)?.name ?? '';

export type Shares = { readonly first: number; readonly firstThree: number };
export type Cell = { readonly effect: string; readonly claims: string; readonly trials: number } & {
  readonly [ranker in Ranker]: Shares;
};

const shareWithin = (trials: readonly Trial[], ranker: Ranker, places: number): number =>
  trials.filter(({ place }) => place[ranker] > 0 && place[ranker] <= places).length /
  Math.max(1, trials.length);

const sharesOf = (trials: readonly Trial[], ranker: Ranker): Shares => ({
  first: shareWithin(trials, ranker, 1),
  firstThree: shareWithin(trials, ranker, 3),
});

const allShares = (trials: readonly Trial[]): Record<Ranker, Shares> => ({
  studbook: sharesOf(trials, 'studbook'),
  oracle: sharesOf(trials, 'oracle'),
  station: sharesOf(trials, 'station'),
  lot: sharesOf(trials, 'lot'),
});

const cellsOf = (planted: readonly Trial[]): readonly Cell[] =>
  (['small', 'large'] as const).flatMap((effect) =>
    CLAIM_BANDS.map(({ name }) => {
      const trials = planted.filter((trial) => trial.size === effect && bandOf(trial) === name);
      return { effect, claims: name, trials: trials.length, ...allShares(trials) };
    }),
  );

/** The least, over cells that have trials, of a ranker's share against the oracle's. */
const leastOfOracle = (cells: readonly Cell[], ranker: Ranker, of: keyof Shares): number =>
  Math.min(...cells.flatMap((cell) => (cell.oracle[of] > 0 ? [cell[ranker][of] / cell.oracle[of]] : [])));

/** A cause is said when it is likelier than not. */
const SAID = 0.5;
const MANY_CLAIMS = 25;

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

const exposureOf = (planted: readonly Trial[]): { exposurePrecision: number; exposureRecall: number } => {
  const sets = planted.flatMap(({ exposure }) => exposure ?? []);
  return {
    exposurePrecision: mean(sets.map(({ both, found }) => (found === 0 ? 0 : both / found))),
    exposureRecall: mean(sets.map((set) => set.both / Math.max(1, set.true))),
  };
};

/** Stated confidence beside what came true, in bands of a fifth; and the mean distance, by trials. */
const calibrationOf = (
  trials: readonly Trial[],
): { distance: number; bands: readonly { stated: number; true: number; trials: number }[] } => {
  const bands = [0, 1, 2, 3, 4].flatMap((band) => {
    const own = trials.filter(({ confidence }) => Math.min(4, Math.floor(confidence * 5)) === band);
    if (own.length === 0) return [];
    return [
      {
        stated: mean(own.map(({ confidence }) => confidence)),
        true: shareWithin(own, 'studbook', 1),
        trials: own.length,
      },
    ];
  });
  const distance = bands.reduce((sum, band) => sum + band.trials * Math.abs(band.stated - band.true), 0);
  return { distance: distance / Math.max(1, trials.length), bands };
};

export type Score = ReturnType<typeof scoreOf>;

export const scoreOf = (trials: readonly Trial[]) => {
  const planted = trials.filter(({ kind }) => kind !== 'none');
  const none = trials.filter(({ kind }) => kind === 'none');
  const withReports = planted.filter(({ reports, claims }) => reports > 0 && claims >= MANY_CLAIMS);
  const cells = cellsOf(planted);
  const rankers = allShares(planted);
  const ofOracle = (ranker: Ranker): { firstOfOracle: number; firstThreeOfOracle: number } => ({
    firstOfOracle: leastOfOracle(cells, ranker, 'first'),
    firstThreeOfOracle: leastOfOracle(cells, ranker, 'firstThree'),
  });
  return {
    trials: trials.length,
    ...rankers.studbook,
    ...ofOracle('studbook'),
    firstWithReports: shareWithin(withReports, 'studbook', 1),
    falseAlarm: none.filter(({ confidence }) => confidence >= SAID).length / Math.max(1, none.length),
    ...exposureOf(planted),
    calibration: calibrationOf(trials),
    tiedWithFirst: mean(planted.map(({ tied }) => tied)),
    msOfProcessor: mean(trials.map(({ ms }) => ms)),
    baselines: Object.fromEntries(
      RANKERS.filter((ranker) => ranker !== 'studbook').map((ranker) => [
        ranker,
        { ...rankers[ranker], ...ofOracle(ranker), firstWithReports: shareWithin(withReports, ranker, 1) },
      ]),
    ),
    cells,
  };
};
