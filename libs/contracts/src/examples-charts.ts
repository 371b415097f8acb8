/** What is said of charts; each is sent to a real server once. */
export const chartExamples = {
  stationChart: { params: { station: 'drywall' } },
  chartNote: { params: { station: 'drywall' }, body: { day: '2026-11-20', note: 'New nail gun' } },
  baseline: {
    params: { station: 'drywall' },
    body: { from: '2026-09-01', to: '2026-10-30', note: 'Before the new nail gun' },
  },
  acknowledgement: { params: { station: 'drywall' }, body: { day: '2026-11-20', note: 'Worn gauge' } },
  alarmBudget: { body: { falseAlarmsPerMonth: '0.25', rules: 'few-counts' } },
  defectCosts: { body: { currency: 'USD', costs: [{ component: 'siding', cost: '37.50' }] } },
};
