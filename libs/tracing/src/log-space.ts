/** log(sum of exp), without overflow. Of nothing: minus infinity. */
export const logSum = (logs: readonly number[]): number => {
  let top = -Infinity;
  for (const log of logs) if (log > top) top = log;
  if (top === -Infinity) return top;

  let sum = 0;
  for (const log of logs) sum += Math.exp(log - top);
  return top + Math.log(sum);
};
