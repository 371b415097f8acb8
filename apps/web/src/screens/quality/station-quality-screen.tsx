import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { usePrintFoot } from '../../look/print-foot';
import { places } from '../../router/places';
import { Link, swapTo, useAddress } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { BaselineForm, NoteForm } from './chart-forms';
import { FoundSection } from './found-section';
import { ParetoSection } from './pareto-section';
import { addressOfSpan, spanOf } from './span';
import { SpanPicker } from './span-picker';
import { UnitSection } from './unit-section';
import { useAgainSoon } from './use-again-soon';
import { useFigures } from './use-figures';
import { WeeklySection } from './weekly-section';
import './quality.css';

type Chart = AnswerOf<'stationChart'>;
const DECIDERS = ['quality-manager', 'administrator'];

const Notes = ({ chart }: { readonly chart: Chart }): ReactNode => {
  const { t } = useSpeech();
  const { day } = useFigures();
  if (chart.annotations.length === 0) return null;
  return (
    <section className="stack tight">
      <h2>{t('chart-note.list')}</h2>
      <ul className="rows">
        {chart.annotations.map((one, at) => (
          <li key={at}>
            <span className="mono">{day(one.day)}</span>
            <span className="grow">{one.note ?? '–'}</span>
            <span className="quiet">{one.by}</span>
          </li>
        ))}
      </ul>
    </section>
  );
};

const Answer = ({ chart, again }: { readonly chart: Chart; readonly again: () => void }): ReactNode => {
  const { t, say } = useSpeech();
  const { me } = useSignedIn();
  const { percent } = useFigures();
  usePrintFoot(t('quality.foot', { from: chart.from, to: chart.to, position: chart.position }));
  const station = say(chart.name);
  const mayDecide = me.roles.some((role) => DECIDERS.includes(role));
  const form = { station: chart.station, day: chart.to, again };
  const { gaps } = chart;
  return (
    <div className="stack charts">
      {chart.unit === null ? (
        <p className="notice">{t('quality.no-data')}</p>
      ) : (
        <UnitSection chart={chart} unit={chart.unit} station={station} mayDecide={mayDecide} again={again} />
      )}
      <WeeklySection chart={chart} station={station} />
      {gaps.gaps.length > 1 && (
        <p>
          {t('gaps.says', {
            mean: Math.round(gaps.center),
            last: gaps.gaps.at(-1) ?? 0,
            longest: Math.max(...gaps.gaps),
            upper: Math.round(gaps.upper),
            share: percent(1 / (1 + gaps.center)),
          })}
        </p>
      )}
      <ParetoSection span={{ from: chart.from, to: chart.to }} station={chart.station} />
      <FoundSection found={chart.found} station={station} />
      <Notes chart={chart} />
      {mayDecide && (
        <div className="chart-forms">
          <NoteForm {...form} />
          <BaselineForm {...form} />
        </div>
      )}
    </div>
  );
};

const StationName = ({ station }: { readonly station: string }): ReactNode => {
  const { say } = useSpeech();
  const { plant } = useSignedIn();
  const name = plant.stations.find(({ id }) => id === station)?.name;
  return name === undefined ? station : say(name);
};

const Asked = ({ chart: { from, to } }: { readonly chart: Chart }): ReactNode => {
  const { t } = useSpeech();
  const { day } = useFigures();
  return <p>{t('quality.asked', { from: day(from), to: day(to) })}</p>;
};

/** One station's charts: is it getting worse, since when, how sure, and which sections stand behind it. */
export const StationQualityScreen = ({ station }: { readonly station: string }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const query = useAddress().searchParams;
  const span = spanOf(query);
  const { answer, trouble, again } = useQuestion('stationChart', { station, ...span });
  useAgainSoon(again);
  return (
    <main className="page quality" id="main" aria-busy={answer === null && trouble === null}>
      <div className="page-head">
        <div>
          <p className="no-print">
            <Link to={places.quality}>{t('quality.title')}</Link>
          </p>
          <h1>
            <StationName station={station} />
          </h1>
          {answer !== null && <Asked chart={answer} />}
        </div>
        <SpanPicker
          span={span}
          answered={{ from: answer?.from ?? null, to: answer?.to ?? null }}
          change={(next) => swapTo(addressOfSpan(next, query, places.stationQuality(station)))}
        />
        <button type="button" className="button no-print" onClick={() => window.print()}>
          {t('chart.print')}
        </button>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {answer !== null && <Answer chart={answer} again={again} />}
      <p className="governing">{say(plant.governing)}</p>
    </main>
  );
};
