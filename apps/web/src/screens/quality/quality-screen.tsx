import type { AnswerOf } from '@libs/contracts';
import { useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { addressOf } from '../../api/paths';
import { useQuestion } from '../../api/use-question';
import { usePrintFoot } from '../../look/print-foot';
import { swapTo, useAddress } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { ClassRates } from './class-rates';
import { FieldSection } from './field-section';
import { addressOfChoice, chosenIn, filterIn, wholeOf } from './filter';
import type { Chosen } from './filter';
import { FilterBar } from './filter-bar';
import { ParetoSection } from './pareto-section';
import { SignalsSection } from './signals-section';
import { addressOfSpan, spanOf } from './span';
import type { Span } from './span';
import { SpanPicker } from './span-picker';
import { TrendSection } from './trend-section';
import { useAgainSoon } from './use-again-soon';
import { useFigures } from './use-figures';
import { YieldSection } from './yield-section';
import './quality.css';

/** Whose trend to show first: the station that lost most. */
const worstStation = (
  rows: readonly { readonly station: string; readonly firstPass: number | null }[],
): string | null =>
  [...rows].sort((one, other) => (one.firstPass ?? 2) - (other.firstPass ?? 2))[0]?.station ?? null;

const Head = ({ span, answered }: { readonly span: Span; readonly answered: Span }): ReactNode => {
  const { t, language } = useSpeech();
  const { day } = useFigures();
  const query = useAddress().searchParams;
  return (
    <div className="page-head">
      <div>
        <h1>{t('quality.title')}</h1>
        {answered.from !== null && answered.to !== null && (
          <p>{t('quality.asked', { from: day(answered.from), to: day(answered.to) })}</p>
        )}
      </div>
      <SpanPicker span={span} answered={answered} change={(next) => swapTo(addressOfSpan(next, query))} />
      <button type="button" className="button no-print" onClick={() => window.print()}>
        {t('chart.print')}
      </button>
      <a
        className="button no-print"
        href={addressOf('weeklyReport', { to: answered.to, language }).path}
        download
      >
        {t('quality.report')}
      </a>
    </div>
  );
};

type ChartsProps = { readonly answer: AnswerOf<'yield'>; readonly chosen: Chosen };
const Charts = ({ answer, chosen }: ChartsProps): ReactNode => {
  const { t, say } = useSpeech();
  usePrintFoot(t('quality.foot', { from: answer.from, to: answer.to, position: answer.position }));
  const [station, setStation] = useState<string | null>(null);
  const { rows, from, to } = answer;
  const filter = useMemo(() => filterIn(chosen), [chosen]);
  const shown = station ?? worstStation(rows);
  if (rows.every(({ left }) => left === 0)) return <p className="notice">{t('quality.no-data')}</p>;
  return (
    <div className="stack charts">
      <YieldSection answer={answer} filter={filter} onStation={setStation} />
      {Object.keys(filter).length > 0 && <p className="notice">{t('filter.only-yields')}</p>}
      <SignalsSection span={{ from, to }} />
      {shown !== null && (
        <TrendSection
          station={shown}
          stations={rows.map((row) => ({ id: row.station, name: say(row.name) }))}
          span={{ from, to }}
          choose={setStation}
        />
      )}
      <ParetoSection span={{ from, to }} />
      <ClassRates rows={rows} />
      <FieldSection />
    </div>
  );
};

/** Where yield is lost, whether it moves, and by what. */
export const QualityScreen = (): ReactNode => {
  const { say } = useSpeech();
  const { plant } = useSignedIn();
  const query = useAddress().searchParams;
  const span = spanOf(query);
  const asWritten = query.toString();
  const chosen = useMemo(() => chosenIn(new URLSearchParams(asWritten)), [asWritten]);
  const { answer, trouble, again } = useQuestion('yield', { by: 'station', ...span, ...wholeOf(chosen) });
  useAgainSoon(again);
  const answered = { from: answer?.from ?? null, to: answer?.to ?? null };
  return (
    <main className="page quality" id="main" aria-busy={answer === null && trouble === null}>
      <Head span={span} answered={answered} />
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {answer !== null && (
        <>
          <FilterBar
            chosen={chosen}
            answer={answer}
            change={(change) => swapTo(addressOfChoice(change, query))}
          />
          <Charts answer={answer} chosen={chosen} />
        </>
      )}
      <p className="governing">{say(plant.governing)}</p>
    </main>
  );
};
