import type { AnswerOf } from '@libs/contracts';
import { CONFIDENCE, lossShares, rolledYield, share, wilson } from '@libs/quality';
import type { Rate } from '@libs/quality';
import type { Days, PassageFilter, YieldSums } from '@libs/views';
import type { Span } from '../told';
import type { Names } from '../names';
import type { Asked } from './asked';
import { daysOf } from './days';
import { againstOf } from './yield-against';

type YieldRow = AnswerOf<'yield'>['rows'][number];
type Sums = ReadonlyMap<string, YieldSums>;
type Bare = Omit<YieldRow, 'lossShare' | 'against'>;

/** Of the sections that left each station in the span: how many were clean, as seen and with escapes, and complete. */
export const yieldQuestion =
  (asked: Asked) =>
  async (span: Span, filter: PassageFilter = {}, against?: Days): Promise<AnswerOf<'yield'>> => {
    const { ledger, views, names } = asked;
    const position = await ledger.head();
    const days = await daysOf(span, asked);
    const sums = await sumsOf(asked, days, filter);
    const before = against === undefined ? null : await sumsOf(asked, against, filter);
    const shown = stationsShown(asked, sums);
    const bare = shown.map((station) =>
      yieldRow(station, sums.get(station) ?? NOTHING_LEFT, names.current()),
    );
    const losses = lossShares(bare.map(seen));
    const compared =
      before === null
        ? []
        : againstOf(
            bare.map(seen),
            shown.map((station) => rateOf(before, station)),
          );
    const busiest = [...bare].sort((a, b) => b.left - a.left)[0];
    return {
      ...days,
      by: 'station',
      position,
      interval: { method: 'wilson', confidence: CONFIDENCE },
      rows: bare.map((row, at) => ({
        ...row,
        lossShare: losses[at] ?? null,
        against: compared[at] ?? null,
      })),
      rolled: rolledYield(bare.map(seen)),
      rolledWithEscapes: rolledYield(
        bare.map(({ left, cleanWithEscapes }) => ({ count: cleanWithEscapes, of: left })),
      ),
      against:
        against === undefined || before === null
          ? null
          : { ...against, rolled: rolledYield(shown.map((station) => rateOf(before, station))) },
      models: busiest === undefined ? [] : [...(await views.models(busiest.station, days))],
    };
  };

const seen = ({ left, clean }: Bare): Rate => ({ count: clean, of: left });

const rateOf = (sums: Sums, station: string): Rate => {
  const { left, clean } = sums.get(station) ?? NOTHING_LEFT;
  return { count: clean, of: left };
};

/** From the counters; from the passages of the span only where some of them are to be left out. */
const sumsOf = ({ views }: Asked, days: Days, filter: PassageFilter): Promise<Sums> =>
  Object.keys(filter).length === 0 ? views.yieldByStation(days) : views.yieldOf(days, filter);

/** Every station and shop of the line that has work to do, and any other a section has left, in the rulebook's order. */
const stationsShown = ({ plans }: Asked, sums: Sums): readonly string[] => {
  const { stations = [], operations = [] } = plans.current()?.rulebook ?? {};
  const atWork = new Set(operations.map(({ station }) => station));
  const isListed = ({ id, kind }: { readonly id: string; readonly kind: string }): boolean =>
    sums.has(id) || ((kind === 'line' || kind === 'shop') && atWork.has(id));
  const known = new Set(stations.map(({ id }) => id));
  return [
    ...stations.filter(isListed).map(({ id }) => id),
    ...[...sums.keys()].filter((id) => !known.has(id)).sort(),
  ];
};

const NOTHING_LEFT: YieldSums = {
  left: 0,
  clean: 0,
  cleanWithEscapes: 0,
  complete: 0,
  mended: 0,
  nonconformances: 0,
  punch: 0,
  shortages: 0,
  records: 0,
};

const yieldRow = (station: string, sums: YieldSums, names: Names): Bare => {
  const firstPass: Rate = { count: sums.clean, of: sums.left };
  const withEscapes: Rate = { count: sums.cleanWithEscapes, of: sums.left };
  return {
    station,
    name: names.station(station),
    left: sums.left,
    clean: sums.clean,
    cleanWithEscapes: sums.cleanWithEscapes,
    complete: sums.complete,
    mendedBeforeLeaving: sums.mended,
    firstPass: share(firstPass),
    firstPassInterval: wilson(firstPass),
    firstPassWithEscapes: share(withEscapes),
    firstPassWithEscapesInterval: wilson(withEscapes),
    completeShare: share({ count: sums.complete, of: sums.left }),
    nonconformances: sums.nonconformances,
    punch: sums.punch,
    shortages: sums.shortages,
    record: sums.records,
  };
};
