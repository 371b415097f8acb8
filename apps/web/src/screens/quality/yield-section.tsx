import { useCallback, useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { ChartFrame } from '../../charts/chart-frame';
import { yieldChart } from '../../charts/yield-chart';
import type { YieldRows } from '../../charts/yield-chart';
import { useSpeech } from '../../words/words';
import { PassagesBehindFigure } from './behind';
import type { PassagesBehind, Which } from './behind';
import type { Chosen } from './filter';
import { useFigures } from './use-figures';
import { useYieldFigures, YieldTable } from './yield-table';
import type { Yield, YieldRow as Row } from './yield-table';

/** Room for a mark, its interval and a finger. */
const ROW_PX = 32;
const AXIS_PX = 40;
/** As many stations are named as the ones that lose most. */
const LOSING = 3;

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

/** Where most of what the line loses is lost; nothing to say where nothing is lost. */
const useLost = ({ rows }: Yield): string | null => {
  const { t, say } = useSpeech();
  const { percent } = useFigures();
  const worst = rows
    .filter(({ lossShare }) => (lossShare ?? 0) > 0)
    .toSorted((a, b) => (b.lossShare ?? 0) - (a.lossShare ?? 0))
    .slice(0, LOSING);
  if (worst.length === 0) return null;
  const places = worst.map((row) => `${say(row.name)} ${percent(row.lossShare)}`).join(', ');
  return t('yield.lost-where', { places });
};

export const YieldSection = ({
  answer,
  filter,
  onStation,
}: {
  readonly answer: Yield;
  readonly filter: Chosen;
  readonly onStation: (station: string) => void;
}): ReactNode => {
  const { t, say } = useSpeech();
  const figures = useFigures();
  const { columns, cells } = useYieldFigures(answer);
  const lost = useLost(answer);
  const [behind, setBehind] = useState<PassagesBehind | null>(null);
  const { rows, from, to } = answer;
  const open = useCallback(
    (row: Row, which: Which): void => {
      onStation(row.station);
      setBehind({ station: row.station, name: say(row.name), which, span: { from, to }, filter });
    },
    [onStation, say, from, to, filter],
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
        table={[columns, ...rows.map(cells)]}
      >
        <div>
          <p className="rolled">
            {t('yield.rolled', {
              seen: figures.percent(answer.rolled),
              escapes: figures.percent(answer.rolledWithEscapes),
            })}
          </p>
          {lost !== null && <p>{lost}</p>}
          {answer.against !== null && (
            <p>{t('against.says', { rolled: figures.percent(answer.against.rolled) })}</p>
          )}
        </div>
      </ChartFrame>
      <YieldTable answer={answer} open={open} />
      {behind !== null && <PassagesBehindFigure behind={behind} change={setBehind} />}
    </>
  );
};
