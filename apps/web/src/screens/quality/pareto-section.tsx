import type { AnswerOf } from '@libs/contracts';
import { useCallback, useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { ChartFrame } from '../../charts/chart-frame';
import { paretoChart } from '../../charts/pareto-chart';
import type { ParetoRows } from '../../charts/pareto-chart';
import { TroubleNotice } from '../../ui/trouble';
import { TableFrame } from '../../ui/table-frame';
import { useSpeech } from '../../words/words';
import { DefectsBehindFigure } from './defects-behind';
import type { DefectsBehind } from './defects-behind';
import type { Span } from './span';
import { useFigures } from './use-figures';

type Counts = AnswerOf<'defectCounts'>;
type Row = Counts['rows'][number];
const BY = ['code', 'component', 'symptom', 'station', 'operation'] as const;
const BY_WORDS = {
  code: 'pareto.by.code',
  component: 'pareto.by.component',
  symptom: 'pareto.by.symptom',
  station: 'pareto.by.station',
  operation: 'pareto.by.operation',
} as const;
const CLASSES = ['nonconformance', 'punch', 'shortage', 'record'] as const;
const CLASS_WORDS = {
  nonconformance: 'class.nonconformance',
  punch: 'class.punch',
  shortage: 'class.shortage',
  record: 'class.record',
} as const;
type Counting = { readonly by: (typeof BY)[number]; readonly class: (typeof CLASSES)[number] };

/** The vital few; what comes after is summed up in one sentence and stands in the table's file. */
const SHOWN = 12;
const ROW_PX = 32;
const AXIS_PX = 40;
const COLUMNS = ['pareto.table', 'pareto.count', 'pareto.share', 'pareto.cumulative'] as const;

const Controls = ({
  counting,
  change,
}: {
  readonly counting: Counting;
  readonly change: (counting: Counting) => void;
}): ReactNode => {
  const { t } = useSpeech();
  return (
    <div className="stack tight no-print">
      <div className="choices" role="group" aria-label={t('pareto.by')}>
        {BY.map((by) => (
          <button
            key={by}
            type="button"
            className="button"
            aria-pressed={counting.by === by}
            onClick={() => change({ ...counting, by })}
          >
            {t(BY_WORDS[by])}
          </button>
        ))}
      </div>
      <div className="choices" role="group" aria-label={t('pareto.class')}>
        {CLASSES.map((name) => (
          <button
            key={name}
            type="button"
            className="button"
            aria-pressed={counting.class === name}
            onClick={() => change({ ...counting, class: name })}
          >
            {t(CLASS_WORDS[name])}
          </button>
        ))}
      </div>
    </div>
  );
};

const useCells = () => {
  const { say } = useSpeech();
  const { percent } = useFigures();
  return (row: Row): readonly string[] => [
    say(row.says),
    String(row.count),
    percent(row.share),
    percent(row.cumulative),
  ];
};

const ParetoTable = ({
  rows,
  open,
}: {
  readonly rows: readonly Row[];
  readonly open: (row: Row) => void;
}): ReactNode => {
  const { t } = useSpeech();
  const cells = useCells();
  return (
    <TableFrame name={t('pareto.table')}>
      <table className="dense">
        <thead>
          <tr>
            {COLUMNS.map((column) => (
              <th key={column} scope="col" className={column === 'pareto.table' ? undefined : 'number'}>
                {t(column)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const [name, ...figures] = cells(row);
            return (
              <tr key={row.key}>
                <th scope="row">
                  <button type="button" className="row-button" onClick={() => open(row)}>
                    {name}
                  </button>
                </th>
                {figures.map((figure, at) => (
                  <td key={at} className="number">
                    {figure}
                  </td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
    </TableFrame>
  );
};

const useTitle = (answer: Counts): string => {
  const { t, say } = useSpeech();
  const [worst] = answer.rows;
  return worst === undefined
    ? t('pareto.none')
    : t('pareto.title', { says: say(worst.says), count: worst.count, total: answer.total });
};

type DrawnProps = { readonly answer: Counts; readonly counting: Counting; readonly controls: ReactNode };
const ParetoDrawn = ({ answer, counting, controls }: DrawnProps): ReactNode => {
  const { t, say } = useSpeech();
  const { percent } = useFigures();
  const cells = useCells();
  const [behind, setBehind] = useState<DefectsBehind | null>(null);
  const shown = useMemo(() => answer.rows.slice(0, SHOWN), [answer]);
  const rest = answer.rows.slice(SHOWN);
  const { from, to } = answer;
  const open = useCallback(
    (row: Row): void =>
      setBehind({
        by: counting.by,
        key: row.key,
        class: counting.class,
        says: say(row.says),
        span: { from, to },
      }),
    [counting, say, from, to],
  );
  const rows = useMemo<ParetoRows>(
    () => ({
      marks: shown.map((row) => ({
        name: say(row.says),
        count: row.count,
        label: `${String(row.count)} · ${percent(row.cumulative)}`,
      })),
      choose: (at) => {
        const row = shown[at];
        if (row !== undefined) open(row);
      },
    }),
    [shown, say, percent, open],
  );
  return (
    <>
      <ChartFrame
        title={useTitle(answer)}
        says={t('pareto.says')}
        rows={rows}
        draw={paretoChart}
        heightPx={Math.max(1, shown.length) * ROW_PX + AXIS_PX}
        name={`defects-by-${counting.by}`}
        table={[COLUMNS.map((column) => t(column)), ...answer.rows.map(cells)]}
        controls={controls}
      >
        <div>
          <ParetoTable rows={shown} open={open} />
          {rest.length > 0 && (
            <p className="quiet">
              {t('pareto.rest', {
                count: rest.length,
                defects: rest.reduce((sum, row) => sum + row.count, 0),
              })}
            </p>
          )}
        </div>
      </ChartFrame>
      {behind !== null && (
        <DefectsBehindFigure key={behind.key} behind={behind} close={() => setBehind(null)} />
      )}
    </>
  );
};

/** Defects, the worst first. */
export const ParetoSection = ({ span }: { readonly span: Span }): ReactNode => {
  const [counting, setCounting] = useState<Counting>({ by: 'code', class: 'nonconformance' });
  const { answer, trouble, again } = useQuestion('defectCounts', { ...counting, ...span });
  const controls = <Controls counting={counting} change={setCounting} />;
  if (trouble !== null) return <TroubleNotice trouble={trouble} again={again} />;
  if (answer === null) return controls;
  return <ParetoDrawn answer={answer} counting={counting} controls={controls} />;
};
