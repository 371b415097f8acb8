import type { AnswerOf } from '@libs/contracts';
import { useCallback, useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { ChartFrame } from '../../charts/chart-frame';
import { scoreChart } from '../../charts/score-chart';
import type { ScoreRows } from '../../charts/score-chart';
import { useSpeech } from '../../words/words';
import { AlarmSays } from './alarm-says';
import { PassagesBehindFigure } from './behind';
import type { PassagesBehind } from './behind';
import { CauseForm } from './chart-forms';
import { FigureTable } from './figure-table';
import { useFigures } from './use-figures';

type Chart = AnswerOf<'stationChart'>;
type Unit = NonNullable<Chart['unit']>;

const HEIGHT_PX = 280;
const COLUMNS = ['unit.day', 'yield.left', 'behind.found', 'unit.score'] as const;

const useSays = ({ plan }: Unit, budget: Chart['budget']): string => {
  const { t } = useSpeech();
  const { percent, day, of } = useFigures();
  const { baseline } = plan;
  return [
    t('unit.says', { usual: percent(plan.usual), sought: percent(plan.sought), limit: plan.limit }),
    t(baseline.by === 'person' ? 'unit.baseline-set' : 'unit.baseline-assumed', {
      from: day(baseline.from),
      to: day(baseline.to),
      counted: of(baseline.counted.count, baseline.counted.of),
    }),
    t('unit.budget', {
      budget: budget.falseAlarmsPerMonth,
      charts: budget.charts,
      sections: Math.round(plan.unitsBetween),
      days: Math.round(budget.workdaysBetween),
    }),
  ].join(' ');
};

type Props = { readonly chart: Chart; readonly unit: Unit; readonly station: string };

const Drawn = ({ chart, unit, station }: Props): ReactNode => {
  const { t } = useSpeech();
  const figures = useFigures();
  const [behind, setBehind] = useState<PassagesBehind | null>(null);
  const { days, alarms, plan } = unit;
  const show = useCallback(
    (day: string): void =>
      setBehind({ station: chart.station, name: station, which: 'left', span: { from: day, to: day } }),
    [chart.station, station],
  );
  const rows = useMemo<ScoreRows>(
    () => ({
      marks: days.map(({ day, highest }) => ({
        day: figures.shortDay(day),
        score: highest,
        alarm: alarms.some((alarm) => alarm.day === day),
      })),
      limit: plan.limit,
      choose: (at) => {
        const day = days[at]?.day;
        if (day !== undefined) show(day);
      },
    }),
    [days, alarms, plan, figures, show],
  );
  const cells = days.map(({ day, left, nonconforming, highest }) => [
    figures.day(day),
    String(left),
    String(nonconforming),
    String(highest),
  ]);
  return (
    <>
      <ChartFrame
        title={t('unit.title', { station, count: alarms.length })}
        says={useSays(unit, chart.budget)}
        rows={rows}
        draw={scoreChart}
        heightPx={HEIGHT_PX}
        name={`unit-${chart.station}`}
        table={[COLUMNS.map((column) => t(column)), ...cells]}
      >
        <FigureTable
          name={t('unit.table')}
          columns={COLUMNS.map((column) => t(column))}
          rows={days.map(({ day }, at) => ({ key: day, cells: cells[at] ?? [], open: () => show(day) }))}
          short
        />
      </ChartFrame>
      {behind !== null && <PassagesBehindFigure key={behind.span.from} behind={behind} change={setBehind} />}
    </>
  );
};

type SectionProps = Props & { readonly mayDecide: boolean; readonly again: () => void };

/** Section by section: the chart that raises alarms, each in plain words with its open item. */
export const UnitSection = ({ mayDecide, again, ...props }: SectionProps): ReactNode => (
  <>
    {props.unit.alarms.toReversed().map((alarm) => (
      <section key={alarm.day} className="stack tight">
        <AlarmSays alarm={alarm} station={props.station} />
        {mayDecide && alarm.acknowledged === null && (
          <CauseForm station={props.chart.station} day={alarm.day} again={again} />
        )}
      </section>
    ))}
    <Drawn {...props} />
  </>
);
