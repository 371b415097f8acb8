import { z } from 'zod';
import * as figures from '../quality-screens';
import * as shapes from '../shapes';
import { get } from './route';

/** Query of every route that takes a span of days. */
export const span = {
  from: {
    required: false,
    about: 'First day, 2026-03-01; left out: 90 days before `to`',
    schema: shapes.Day,
  },
  to: { required: false, about: 'Last day; left out: the last day on record', schema: shapes.Day },
};
const findingClass = {
  required: false,
  about: 'nonconformance (default), punch, shortage, record',
  schema: shapes.FindingClass,
};

/** Yield and defects over a span. */
export const qualityRoutes = {
  yield: get('/api/yield', 'First-pass yield of each station over a span', figures.YieldAnswer, {
    query: { by: { required: true, about: '`station`', schema: z.literal('station') }, ...span },
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
      ...span,
    },
  }),
  defectCounts: get('/api/defects/counts', 'Defects counted, the worst first', figures.DefectCountsAnswer, {
    query: {
      by: {
        required: false,
        about: 'code (default), component, symptom, station, operation',
        schema: z.enum(['code', 'component', 'symptom', 'station', 'operation']),
      },
      station: { required: false, about: 'Only those charged to this station' },
      class: findingClass,
      ...span,
    },
  }),
  defects: get('/api/defects', 'Defects, latest first', figures.DefectsAnswer, {
    query: {
      station: { required: false, about: 'Charged to this station' },
      serial: { required: false, about: 'Of this section' },
      component: { required: false, about: 'Component' },
      symptom: { required: false, about: 'Symptom' },
      class: { ...findingClass, about: 'nonconformance, punch, shortage, record; left out: all' },
      ...span,
    },
  }),
} as const;
