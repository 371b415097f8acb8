export const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);

/** NaN of nothing: whoever has nothing to average has to say so before. */
export const mean = (values: readonly number[]): number => sum(values) / values.length;

/** Running totals: as many as there are values. */
export const runningSums = (values: readonly number[]): readonly number[] => {
  let total = 0;
  return values.map((each) => (total += each));
};
