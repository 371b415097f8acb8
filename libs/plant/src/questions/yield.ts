import type { AnswerOf } from '@libs/contracts';
import { CONFIDENCE, rolledYield, share, wilson } from '@libs/quality';
import type { Rate } from '@libs/quality';
import type { YieldSums } from '@libs/views';
import type { Span } from '../told';
import type { Names } from '../names';
import type { Asked } from './asked';
import { daysOf } from './days';

type YieldRow = AnswerOf<'yield'>['rows'][number];

/** Of the sections that left each station in the span: how many were clean, as seen and with escapes, and complete. */
export const yieldQuestion =
  (asked: Asked) =>
  async (span: Span): Promise<AnswerOf<'yield'>> => {
    const { ledger, views, names } = asked;
    const position = await ledger.head();
    const days = await daysOf(span, asked);
    const sums = await views.yieldByStation(days);
    const rows = stationsShown(asked, sums).map((station) =>
      yieldRow(station, sums.get(station) ?? NOTHING_LEFT, names.current()),
    );
    return {
      ...days,
      by: 'station',
      position,
      interval: { method: 'wilson', confidence: CONFIDENCE },
      rows,
      rolled: rolledYield(rows.map(({ left, clean }) => ({ count: clean, of: left }))),
      rolledWithEscapes: rolledYield(
        rows.map(({ left, cleanWithEscapes }) => ({ count: cleanWithEscapes, of: left })),
      ),
    };
  };

/** Every station and shop of the line that has work to do, and any other a section has left, in the rulebook's order. */
const stationsShown = ({ plans }: Asked, sums: ReadonlyMap<string, YieldSums>): readonly string[] => {
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

const yieldRow = (station: string, sums: YieldSums, names: Names): YieldRow => {
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
