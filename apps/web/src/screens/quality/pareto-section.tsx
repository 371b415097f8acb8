import type { AnswerOf } from '@libs/contracts';
import { useCallback, useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { ChartFrame } from '../../charts/chart-frame';
import { paretoChart } from '../../charts/pareto-chart';
import type { ParetoRows } from '../../charts/pareto-chart';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { CostForm } from './cost-form';
import { DefectsBehindFigure } from './defects-behind';
import type { DefectsBehind } from './defects-behind';
import { FigureTable } from './figure-table';
import type { FigureRow } from './figure-table';
import type { Span } from './span';
import { useAgainSoon } from './use-again-soon';
import { useFigures } from './use-figures';

type Counts = AnswerOf<'defectCounts'>;
type Row = Counts['rows'][number];
const BY = ['code', 'component', 'symptom', 'station', 'operation', 'crew', 'lot'] as const;
const BY_WORDS = {
  code: 'pareto.by.code',
  component: 'pareto.by.component',
  symptom: 'pareto.by.symptom',
  station: 'pareto.by.station',
  operation: 'pareto.by.operation',
  crew: 'pareto.by.crew',
  lot: 'pareto.by.lot',
} as const;
const CLASSES = ['nonconformance', 'punch', 'shortage', 'record'] as const;
const CLASS_WORDS = {
  nonconformance: 'class.nonconformance',
  punch: 'class.punch',
  shortage: 'class.shortage',
  record: 'class.record',
} as const;
const WEIGHTS = ['count', 'cost'] as const;
const WEIGHT_WORDS = { count: 'pareto.weigh.count', cost: 'pareto.weigh.cost' } as const;
type Counting = {
  readonly by: (typeof BY)[number];
  readonly class: (typeof CLASSES)[number];
  readonly weigh: (typeof WEIGHTS)[number];
};

/** The vital few; what comes after is summed up in one sentence and stands in the table's file. */
const SHOWN = 12;
const DWARFING = 3;
const ROW_PX = 32;
const AXIS_PX = 40;
const COLUMNS = ['pareto.table', 'pareto.count', 'pareto.share', 'pareto.cumulative'] as const;

type ChoicesProps<C extends string> = {
  readonly name: string;
  readonly from: readonly C[];
  readonly says: (choice: C) => string;
  readonly chosen: C;
  readonly choose: (choice: C) => void;
};
const Choices = <C extends string>({ name, from, says, chosen, choose }: ChoicesProps<C>): ReactNode => (
  <div className="choices" role="group" aria-label={name}>
    {from.map((choice) => (
      <button
        key={choice}
        type="button"
        className="button"
        aria-pressed={chosen === choice}
        onClick={() => choose(choice)}
      >
        {says(choice)}
      </button>
    ))}
  </div>
);

type ControlsProps = { readonly counting: Counting; readonly change: (counting: Counting) => void };
const Controls = ({ counting, change }: ControlsProps): ReactNode => {
  const { t } = useSpeech();
  return (
    <div className="stack tight no-print">
      <Choices
        name={t('pareto.by')}
        from={BY}
        says={(by) => t(BY_WORDS[by])}
        chosen={counting.by}
        choose={(by) => change({ ...counting, by })}
      />
      <Choices
        name={t('pareto.class')}
        from={CLASSES}
        says={(name) => t(CLASS_WORDS[name])}
        chosen={counting.class}
        choose={(name) => change({ ...counting, class: name })}
      />
      <Choices
        name={t('pareto.weigh')}
        from={WEIGHTS}
        says={(weigh) => t(WEIGHT_WORDS[weigh])}
        chosen={counting.weigh}
        choose={(weigh) => change({ ...counting, weigh })}
      />
    </div>
  );
};

/** Counts as they are; money with its currency, and no cents where figures are reckoned anyway. */
const sizeOf = ({ weigh, currency }: Counts, locale: string): ((size: number) => string) => {
  if (weigh === 'count' || currency === null) return String;
  const format = new Intl.NumberFormat(locale, { style: 'currency', currency, maximumFractionDigits: 0 });
  return (size) => format.format(size);
};
const useSize = (answer: Counts): ((size: number) => string) => sizeOf(answer, useSpeech().locale);

const useCells = (answer: Counts) => {
  const { say } = useSpeech();
  const { percent } = useFigures();
  const size = useSize(answer);
  return (row: Row): readonly string[] => [
    say(row.says),
    size(row.count),
    percent(row.share),
    percent(row.cumulative),
  ];
};

const useTitle = (answer: Counts): string => {
  const { t, say } = useSpeech();
  const size = useSize(answer);
  const [worst] = answer.rows;
  if (answer.weigh === 'cost' && answer.currency === null) return t('pareto.no-costs');
  if (worst === undefined) return t('pareto.none');
  const told = { says: say(worst.says), count: size(worst.count), total: size(answer.total) };
  return t(answer.weigh === 'cost' ? 'pareto.title.cost' : 'pareto.title', told);
};

type DrawnProps = {
  readonly answer: Counts;
  readonly counting: Counting;
  readonly controls: ReactNode;
  readonly station: string | null;
};
const ParetoDrawn = ({ answer, counting, controls, station }: DrawnProps): ReactNode => {
  const { t, say, locale } = useSpeech();
  const { percent } = useFigures();
  const size = useSize(answer);
  const cells = useCells(answer);
  const [behind, setBehind] = useState<DefectsBehind | null>(null);
  const shown = useMemo(() => answer.rows.slice(0, SHOWN), [answer]);
  const rest = answer.rows.slice(SHOWN);
  const others = rest.reduce((sum, row) => sum + row.count, 0);
  const restCells = [
    t('pareto.other', { count: rest.length }),
    size(others),
    percent(others / answer.total),
    percent(1),
  ];
  const columns = COLUMNS.map((column) =>
    t(answer.weigh === 'cost' && column === 'pareto.count' ? 'pareto.cost' : column),
  );
  const { from, to } = answer;
  const open = useCallback(
    (row: Row): void =>
      setBehind({
        by: counting.by,
        key: row.key,
        class: counting.class,
        says: say(row.says),
        station,
        span: { from, to },
      }),
    [counting, say, station, from, to],
  );
  const rows = useMemo<ParetoRows>(
    () => ({
      marks: [
        ...shown.map((row) => ({
          name: say(row.says),
          count: row.count,
          label: `${sizeOf(answer, locale)(row.count)} · ${percent(row.cumulative)}`,
        })),
        // Last whatever its size: what is summed up there is no one thing. Where it would dwarf them all, the table has it.
        ...(rest.length === 0 || others > DWARFING * (shown[0]?.count ?? 0)
          ? []
          : [
              {
                name: t('pareto.other', { count: rest.length }),
                count: others,
                label: sizeOf(answer, locale)(others),
              },
            ]),
      ],
      choose: (at) => {
        const row = shown[at];
        if (row !== undefined && row.key.trim() !== '') open(row);
      },
    }),
    [shown, rest.length, others, answer, locale, say, t, percent, open],
  );
  return (
    <>
      <ChartFrame
        title={useTitle(answer)}
        says={t(counting.by === 'lot' ? 'pareto.says.lot' : 'pareto.says')}
        rows={rows}
        draw={paretoChart}
        heightPx={(Math.max(1, shown.length) + Math.min(1, rest.length)) * ROW_PX + AXIS_PX}
        name={`defects-by-${counting.by}`}
        table={[columns, ...answer.rows.map(cells)]}
        controls={controls}
      >
        <div>
          <FigureTable
            name={t('pareto.table')}
            columns={columns}
            rows={[
              ...shown.map((row) => rowOf(row, cells(row), open)),
              ...(rest.length === 0 ? [] : [{ key: '(rest)', cells: restCells }]),
            ]}
          />
          {answer.weigh === 'cost' && answer.unpriced > 0 && (
            <p className="quiet">{t('pareto.unpriced', { count: answer.unpriced })}</p>
          )}
        </div>
      </ChartFrame>
      {behind !== null && (
        <DefectsBehindFigure key={behind.key} behind={behind} close={() => setBehind(null)} />
      )}
    </>
  );
};

/** What has no name (no crew known, no lot recorded) has nothing behind it to ask for. */
const rowOf = (row: Row, cells: readonly string[], open: (row: Row) => void): FigureRow =>
  row.key.trim() === '' ? { key: row.key, cells } : { key: row.key, cells, open: () => open(row) };

type SectionProps = { readonly span: Span; readonly station?: string };

/** Defects, the worst first; of one station where it is named. */
export const ParetoSection = ({ span, station }: SectionProps): ReactNode => {
  const [counting, setCounting] = useState<Counting>({ by: 'code', class: 'nonconformance', weigh: 'count' });
  const asked = { ...counting, ...span, ...(station === undefined ? {} : { station }) };
  const { answer, trouble, again } = useQuestion('defectCounts', asked);
  useAgainSoon(again);
  const controls = <Controls counting={counting} change={setCounting} />;
  if (trouble !== null) return <TroubleNotice trouble={trouble} again={again} />;
  if (answer === null) return controls;
  return (
    <>
      <ParetoDrawn answer={answer} counting={counting} controls={controls} station={station ?? null} />
      {counting.weigh === 'cost' && <CostForm costs={answer} again={again} />}
    </>
  );
};
