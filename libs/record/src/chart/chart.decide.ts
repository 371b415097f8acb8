import { accept, assertNever, reject } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type { ChartCommand } from './chart.commands';
import type { ChartEvent, RecordedChartEvent } from './chart.events';
import { bareChart } from './chart.state';
import type { ChartNote, ChartState } from './chart.state';

/** Listed in order of precedence. */
export type ChartRejection =
  | { readonly code: 'not-allowed'; readonly actor: string; readonly needs: string }
  | { readonly code: 'station-unknown'; readonly station: string }
  | { readonly code: 'component-unknown'; readonly component: string }
  | { readonly code: 'baseline-backwards'; readonly from: string };

export type ChartFacts = {
  readonly actor: string;
  readonly roles: readonly string[];
  /** A rulebook that lists none takes any. */
  readonly stations: ReadonlySet<string>;
  /** The same. */
  readonly components: ReadonlySet<string>;
};

const READERS = ['quality-manager', 'administrator'];

export const decide = (
  command: ChartCommand,
  _chart: ChartState,
  { actor, roles, stations, components }: ChartFacts,
): Decision<ChartEvent, ChartRejection> => {
  if (!roles.some((role) => READERS.includes(role))) {
    return reject({ code: 'not-allowed', actor, needs: 'quality-manager' });
  }
  if (command.type === 'SetAlarmBudget') return accept({ type: 'AlarmBudgetSet', data: command.data });
  if (command.type === 'SetDefectCosts') {
    const strange = command.data.costs.find(
      ({ component }) => components.size > 0 && !components.has(component),
    );
    return strange === undefined
      ? accept({ type: 'DefectCostsSet', data: command.data })
      : reject({ code: 'component-unknown', component: strange.component });
  }

  const { station } = command.data;
  if (stations.size > 0 && !stations.has(station)) return reject({ code: 'station-unknown', station });
  return onChart(command);
};

const onChart = (
  command: Exclude<ChartCommand, { readonly type: 'SetAlarmBudget' | 'SetDefectCosts' }>,
): Decision<ChartEvent, ChartRejection> => {
  switch (command.type) {
    case 'AnnotateChart':
      return accept({ type: 'ChartAnnotated', data: command.data });
    case 'AcknowledgeSignal':
      return accept({ type: 'SignalAcknowledged', data: command.data });
    case 'SetBaseline':
      return command.data.from > command.data.to
        ? reject({ code: 'baseline-backwards', from: command.data.from })
        : accept({ type: 'BaselineSet', data: command.data });
    default:
      return assertNever(command);
  }
};

export const evolve = (chart: ChartState, event: RecordedChartEvent): ChartState => {
  switch (event.type) {
    case 'ChartAnnotated':
      return { ...chart, annotations: [...chart.annotations, { day: event.data.day, ...noteOf(event) }] };
    case 'SignalAcknowledged':
      return { ...chart, acknowledged: [...chart.acknowledged, { day: event.data.day, ...noteOf(event) }] };
    case 'BaselineSet': {
      const { from, to } = event.data;
      const others = chart.baselines.filter((one) => one.from !== from);
      const baselines = [...others, { from, to, ...noteOf(event) }];
      return { ...chart, baselines: baselines.sort((a, b) => (a.from < b.from ? -1 : 1)) };
    }
    case 'AlarmBudgetSet':
      return { ...chart, budget: event.data };
    case 'DefectCostsSet':
      return { ...chart, costs: event.data };
    default:
      return assertNever(event);
  }
};

const noteOf = (
  event: Exclude<RecordedChartEvent, { readonly type: 'AlarmBudgetSet' | 'DefectCostsSet' }>,
): ChartNote => ({
  note: event.data.note,
  by: event.actor,
  at: event.occurredAt,
});

export const CHART: StreamKind<ChartCommand, ChartState, ChartEvent, ChartRejection, ChartFacts> = {
  name: 'chart',
  initial: bareChart,
  decide,
  evolve,
};
