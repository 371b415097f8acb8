import type { AnswerOf } from '@libs/contracts';
import { useCallback, useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { ChartFrame } from '../../charts/chart-frame';
import { yieldChart } from '../../charts/yield-chart';
import type { YieldRows } from '../../charts/yield-chart';
import { TableFrame } from '../../ui/table-frame';
import { useSpeech } from '../../words/words';
import { PassagesBehindFigure } from './behind';
import type { PassagesBehind, Which } from './behind';
import { useFigures } from './use-figures';

type Yield = AnswerOf<'yield'>;
type Row = Yield['rows'][number];

/** Room for a mark, its interval and a finger. */
const ROW_PX = 32;
const AXIS_PX = 40;

const worstOf = (rows: readonly Row[]): Row | null =>
  rows.reduce<Row | null>(
    (worst, row) => (row.firstPass !== null && row.firstPass < (worst?.firstPass ?? 1) ? row : worst),
    null,
  );

const useTitle = (rows: readonly Row[]): string => {
  const { t, say } = useSpeech();
  const worst = worstOf(rows);
  return worst === null
    ? t('yield.finding-none')
    : t('yield.finding', { station: say(worst.name), clean: worst.clean, left: worst.left });
};

const COLUMNS = [
  'yield.station',
  'yield.seen',
  'yield.interval',
  'yield.escapes',
  'yield.complete',
  'yield.mended',
] as const;

const useCells = () => {
  const { t, say } = useSpeech();
  const figures = useFigures();
  return (row: Row): readonly string[] =>
    row.left === 0
      ? [say(row.name), t('yield.nothing-left'), '', '', '', '']
      : [
          say(row.name),
          `${figures.percent(row.firstPass)} · ${figures.of(row.clean, row.left)}`,
          figures.range(row.firstPassInterval),
          `${figures.percent(row.firstPassWithEscapes)} · ${figures.of(row.cleanWithEscapes, row.left)}`,
          `${figures.percent(row.completeShare)} · ${figures.of(row.complete, row.left)}`,
          String(row.mendedBeforeLeaving),
        ];
};

type TableProps = { readonly rows: readonly Row[]; readonly open: (row: Row, which: Which) => void };
const YieldTable = ({ rows, open }: TableProps): ReactNode => {
  const { t } = useSpeech();
  const cells = useCells();
  return (
    <TableFrame name={t('yield.table')}>
      <table className="dense">
        <caption>{t('yield.table')}</caption>
        <thead>
          <tr>
            {COLUMNS.map((column) => (
              <th key={column} scope="col" className={column === 'yield.station' ? undefined : 'number'}>
                {t(column)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const [name, ...figures] = cells(row);
            return (
              <tr key={row.station}>
                <th scope="row">
                  <button
                    type="button"
                    className="row-button"
                    onClick={() => open(row, row.clean < row.left ? 'nonconforming' : 'left')}
                  >
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

export const YieldSection = ({
  answer,
  onStation,
}: {
  readonly answer: Yield;
  readonly onStation: (station: string) => void;
}): ReactNode => {
  const { t, say } = useSpeech();
  const figures = useFigures();
  const cells = useCells();
  const [behind, setBehind] = useState<PassagesBehind | null>(null);
  const { rows, from, to } = answer;
  const open = useCallback(
    (row: Row, which: Which): void => {
      onStation(row.station);
      setBehind({ station: row.station, name: say(row.name), which, span: { from, to } });
    },
    [onStation, say, from, to],
  );
  const drawnRows = useMemo<YieldRows>(
    () => ({
      marks: rows.map((row) => ({
        name: say(row.name),
        counted: row.left === 0 ? '' : figures.of(row.clean, row.left),
        seen: row.firstPass,
        escapes: row.firstPassWithEscapes,
        range: row.firstPassInterval,
      })),
      percent: figures.percent,
      choose: (at) => {
        const row = rows[at];
        if (row !== undefined) open(row, row.clean < row.left ? 'nonconforming' : 'left');
      },
    }),
    [rows, figures, say, open],
  );
  const says = t('yield.says', {
    confidence: Math.round(answer.interval.confidence * 100),
    method: answer.interval.method === 'wilson' ? t('interval.wilson') : answer.interval.method,
  });
  return (
    <>
      <ChartFrame
        title={useTitle(rows)}
        says={says}
        rows={drawnRows}
        draw={yieldChart}
        heightPx={rows.length * ROW_PX + AXIS_PX}
        name={`yield-${from}-${to}`}
        table={[COLUMNS.map((column) => t(column)), ...rows.map(cells)]}
      >
        <div>
          <YieldTable rows={rows} open={open} />
          <p className="rolled">
            {t('yield.rolled', {
              seen: figures.percent(answer.rolled),
              escapes: figures.percent(answer.rolledWithEscapes),
            })}
          </p>
        </div>
      </ChartFrame>
      {behind !== null && <PassagesBehindFigure behind={behind} change={setBehind} />}
    </>
  );
};
