import type { AnswerOf } from '@libs/contracts';
import { useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { ChartFrame } from '../../charts/chart-frame';
import { trendChart } from '../../charts/trend-chart';
import type { TrendRows } from '../../charts/trend-chart';
import { useSignedIn } from '../../session/session';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { FigureTable } from './figure-table';
import { useAgainSoon } from './use-again-soon';
import { useFigures } from './use-figures';

type Field = AnswerOf<'field'>;
type Figures = Field['ages'][number];

const HEIGHT_PX = 280;
const READERS = ['quality-manager', 'administrator'];
const AGES = ['30', '90', '180', '365'] as const;
const COLUMNS = ['field.watched', 'field.claimed', 'yield.interval', 'field.claims', 'field.mean'] as const;

const useCells = () => {
  const { locale } = useSpeech();
  const figures = useFigures();
  const two = new Intl.NumberFormat(locale, { minimumFractionDigits: 2, maximumFractionDigits: 2 });
  return ({ watched, homes, claimed, interval, claims, mean, meanError }: Figures): readonly string[] => [
    figures.of(watched, homes),
    figures.percent(claimed),
    claimed === null ? '' : figures.range(interval),
    String(claims),
    mean === null ? '–' : `${two.format(mean)}${meanError === null ? '' : ` ± ${two.format(meanError)}`}`,
  ];
};

const Drawn = ({ field, controls }: { readonly field: Field; readonly controls: ReactNode }): ReactNode => {
  const { t } = useSpeech();
  const figures = useFigures();
  const cells = useCells();
  const { months, overall, age } = field;
  const rows = useMemo<TrendRows>(
    () => ({
      marks: months.map(({ month, claimed, interval, watched, homes }) => ({
        week: month,
        counted: `${String(watched)}/${String(homes)}`,
        share: claimed,
        range: interval,
      })),
      overall: overall.claimed,
      percent: figures.percent,
      choose: () => undefined,
    }),
    [months, overall, figures],
  );
  const columns = COLUMNS.map((column) => t(column));
  return (
    <ChartFrame
      title={t('field.title', {
        share: figures.percent(overall.claimed),
        age,
        homes: field.homes,
        claims: field.claims,
      })}
      says={t('field.says', { asOf: figures.day(field.asOf) })}
      rows={rows}
      draw={trendChart}
      heightPx={HEIGHT_PX}
      name={`field-${String(age)}-days`}
      table={[[t('field.month'), ...columns], ...months.map((month) => [month.month, ...cells(month)])]}
      controls={controls}
    >
      <div className="stack tight">
        <FigureTable
          name={t('field.by-age')}
          caption
          columns={[t('field.age'), ...columns]}
          rows={field.ages.map((each) => ({
            key: String(each.age),
            cells: [t('field.days', { days: each.age }), ...cells(each)],
          }))}
        />
        <FigureTable
          name={t('field.by-month', { age })}
          caption
          short
          columns={[t('field.month'), ...columns]}
          rows={months.map((each) => ({ key: each.month, cells: [each.month, ...cells(each)] }))}
        />
      </div>
    </ChartFrame>
  );
};

/** Claims from the field by age since occupancy: which month of manufacture is worse, as early as it can be told. */
export const FieldSection = (): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSignedIn();
  const [age, setAge] = useState<string>('90');
  const mayRead = me.roles.some((role) => READERS.includes(role));
  const { answer, trouble, again } = useQuestion('field', mayRead ? { age } : null);
  useAgainSoon(again);
  if (trouble !== null) return <TroubleNotice trouble={trouble} again={again} />;
  if (!mayRead || (answer !== null && answer.homes === 0)) return null;
  const controls = (
    <div className="choices no-print" role="group" aria-label={t('field.age')}>
      {AGES.map((each) => (
        <button
          key={each}
          type="button"
          className="button"
          aria-pressed={age === each}
          onClick={() => setAge(each)}
        >
          {t('field.days', { days: each })}
        </button>
      ))}
    </div>
  );
  return answer === null ? controls : <Drawn field={answer} controls={controls} />;
};
