/**
 * Where an increasing or decreasing function crosses zero between `low` and `high`, by halving.
 * Slow and certain: 200 halvings end at neighbouring numbers, and nothing here asks for more than a few roots.
 */
export const crossing = (f: (x: number) => number, low: number, high: number): number => {
  const rising = f(high) > f(low);
  let [left, right] = [low, high];
  for (let step = 0; step < 200; step += 1) {
    const middle = (left + right) / 2;
    if (middle === left || middle === right) return middle;
    if (f(middle) > 0 === rising) right = middle;
    else left = middle;
  }
  return (left + right) / 2;
};
