import type { AnswerOf } from '@libs/contracts';
import type { Meta, ReadStream } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import { CHART } from '@libs/record';
import type { ChartCommand, ChartFacts } from '@libs/record';
import { recordedAnswer } from './answers';
import { rolesOf } from './facts';
import { idsOf, rulebookAt } from './lots';
import type { Tellings, Told } from './told';
import { arrivalOf, askLedger, rejected, sealedText } from './telling';
import type { Arrival, When } from './telling';
import type { Workings } from './workings';

/** What is said of all charts together stands in a stream of its own; no station is called so. */
export const ALL_CHARTS = '(all)';

type ChartTelling = 'chartNote' | 'baseline' | 'acknowledgement' | 'alarmBudget' | 'defectCosts';

export const chartTellings = (workings: Workings): Pick<Tellings, ChartTelling> => ({
  chartNote: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'chartNote', body, sender, params });
    const data = { station: stationOf(params), day: body.day, note: sealed(workings, arrival, params) };
    return tellChart(workings, arrival, { type: 'AnnotateChart', data });
  },
  baseline: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'baseline', body, sender, params });
    const { from, to } = body;
    const data = { station: stationOf(params), from, to, note: sealed(workings, arrival, params) };
    return tellChart(workings, arrival, { type: 'SetBaseline', data });
  },
  acknowledgement: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'acknowledgement', body, sender, params });
    const data = { station: stationOf(params), day: body.day, note: sealed(workings, arrival, params) };
    return tellChart(workings, arrival, { type: 'AcknowledgeSignal', data });
  },
  alarmBudget: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'alarmBudget', body, sender, params });
    const { falseAlarmsPerMonth, rules } = body;
    return tellChart(workings, arrival, { type: 'SetAlarmBudget', data: { falseAlarmsPerMonth, rules } });
  },
  defectCosts: (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'defectCosts', body, sender, params });
    const { currency, costs } = body;
    return tellChart(workings, arrival, { type: 'SetDefectCosts', data: { currency, costs } });
  },
});

type Params = { readonly [name: string]: string };

const stationOf = (params: Params): string => params['station'] ?? '';

const sealed = (
  workings: Workings,
  arrival: Arrival<When & { readonly note: string }>,
  params: Params,
): string =>
  sealedText(workings, arrival, {
    ref: { kind: CHART.name, serial: stationOf(params) },
    field: 'note',
    text: arrival.body.note,
  });

const tellChart = async <B extends When & { readonly [field: string]: unknown }>(
  workings: Workings,
  arrival: Arrival<B>,
  command: ChartCommand,
): Promise<Told<AnswerOf<'chartNote'>>> => {
  const facts = (read: ReadStream, meta: Meta): ChartFacts => {
    const rulebook = rulebookAt(workings.plans, read, meta);
    return {
      actor: meta.actor,
      roles: rolesOf(read, meta.actor, arrival.sender.roles ?? []),
      stations: idsOf(rulebook?.stations),
      components: idsOf(rulebook?.components),
    };
  };
  const id = 'station' in command.data ? command.data.station : ALL_CHARTS;
  const outcome = await askLedger(workings, arrival, [partOf({ kind: CHART, id, command, facts })]);
  return outcome.ok
    ? { ok: true, answer: await recordedAnswer(workings, outcome) }
    : rejected(outcome.rejection, arrival.body);
};
