import { z } from 'zod';
import * as figures from '../quality-screens';
import * as charts from '../quality-signals';
import * as shapes from '../shapes';
import { get, tell } from './route';

/** Query of every route that takes a span of days. */
export const span = {
  from: {
    required: false,
    about: 'First day, 2026-03-01; left out: 90 days before `to`',
    schema: shapes.Day,
  },
  to: { required: false, about: 'Last day; left out: the last day on record', schema: shapes.Day },
};
const Clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time such as 06:00');
/** Only some of the sections that left. */
const filter = {
  model: { required: false, about: 'Of this model' },
  crew: { required: false, about: 'On which this crew recorded work at the station' },
  attribute: { required: false, about: 'An attribute of the design, with `value`' },
  value: { required: false, about: 'Its value' },
  left_from: { required: false, about: 'A shift: left at this time of the day or later', schema: Clock },
  left_to: {
    required: false,
    about: 'and before this; earlier than the first: over midnight',
    schema: Clock,
  },
};
const findingClass = {
  required: false,
  about: 'nonconformance (default), punch, shortage, record',
  schema: shapes.FindingClass,
};

const Pdf = z.unknown().meta({ description: 'A PDF, tagged for screen readers' });

const managers = ['quality-manager', 'administrator'] as const;

/** Yield and defects over a span, charts and what they signal. */
export const qualityRoutes = {
  yield: get('/api/yield', 'First-pass yield of each station over a span', figures.YieldAnswer, {
    query: {
      by: { required: true, about: '`station`', schema: z.literal('station') },
      against_from: { required: false, about: 'Compare with the span from this day', schema: shapes.Day },
      against_to: { required: false, about: 'to this', schema: shapes.Day },
      ...filter,
      ...span,
    },
  }),
  yieldTrend: get(
    '/api/yield/trend',
    'First-pass yield of one station, week by week',
    figures.YieldTrendAnswer,
    {
      query: { station: { required: true, about: 'Station' }, ...span },
    },
  ),
  passages: get('/api/yield/sections', 'The sections behind a figure', figures.PassagesAnswer, {
    query: {
      station: { required: true, about: 'Station' },
      which: {
        required: false,
        about: 'left (default), nonconforming, escaped, incomplete',
        schema: z.enum(['left', 'nonconforming', 'escaped', 'incomplete']),
      },
      ...filter,
      ...span,
    },
  }),
  defectCounts: get('/api/defects/counts', 'Defects counted, the worst first', figures.DefectCountsAnswer, {
    query: {
      by: {
        required: false,
        about: 'code (default), component, symptom, station, operation, crew, lot',
        schema: z.enum(['code', 'component', 'symptom', 'station', 'operation', 'crew', 'lot']),
      },
      weigh: {
        required: false,
        about: 'count (default), or cost: by what the plant says a defect of a component costs',
        schema: z.enum(['count', 'cost']),
      },
      station: { required: false, about: 'Only those charged to this station' },
      class: findingClass,
      ...span,
    },
  }),
  signals: get(
    '/api/quality/signals',
    'Each station: is it getting worse, since when',
    charts.SignalsAnswer,
    {
      query: { ...span },
    },
  ),
  stationChart: get(
    '/api/quality/stations/{station}',
    'Control charts of one station, with their limits and signals',
    charts.StationChartAnswer,
    { query: { ...span } },
  ),
  field: get(
    '/api/quality/field',
    'Claims by age since occupancy, by month of manufacture',
    figures.FieldAnswer,
    {
      query: {
        age: {
          required: false,
          about: 'Age in days that months are compared at; left out: 90',
          schema: z.string().regex(/^[1-9]\d{0,3}$/, 'a number of days such as 90'),
        },
      },
      access: managers,
    },
  ),
  weeklyReport: get('/api/quality/report', 'The weekly report to print, one page a station', Pdf, {
    query: {
      to: { required: false, about: 'Last day; left out: the last on record', schema: shapes.Day },
      language: { required: false, about: 'en (default), es', schema: z.enum(['en', 'es']) },
    },
    media: 'application/pdf',
  }),
  chartNote: tell(
    '/api/quality/stations/{station}/notes',
    'Say on a chart what happened on a day',
    { body: charts.ChartNoteRequest, answer: shapes.Recorded },
    { access: managers },
  ),
  baseline: tell(
    '/api/quality/stations/{station}/baselines',
    'Set the days that a chart’s limits come from',
    { body: charts.BaselineRequest, answer: shapes.Recorded },
    { access: managers },
  ),
  acknowledgement: tell(
    '/api/quality/stations/{station}/acknowledgements',
    'Say what was behind a signal',
    { body: charts.AcknowledgementRequest, answer: shapes.Recorded },
    { access: managers },
  ),
  alarmBudget: tell(
    '/api/quality/budget',
    'Set how many false alarms a month all charts together may give',
    { body: charts.BudgetRequest, answer: shapes.Recorded },
    { access: managers },
  ),
  defectCosts: tell(
    '/api/quality/costs',
    'Say what a defect of each component costs the plant',
    { body: charts.CostsRequest, answer: shapes.Recorded },
    { access: managers },
  ),
  defects: get('/api/defects', 'Defects, latest first', figures.DefectsAnswer, {
    query: {
      station: { required: false, about: 'Charged to this station' },
      serial: { required: false, about: 'Of this section' },
      component: { required: false, about: 'Component' },
      symptom: { required: false, about: 'Symptom' },
      operation: { required: false, about: 'Operation that fell short' },
      crew: { required: false, about: 'Crew that did it' },
      lot: { required: false, about: 'Lot recorded with it' },
      class: { ...findingClass, about: 'nonconformance, punch, shortage, record; left out: all' },
      ...span,
    },
  }),
} as const;
