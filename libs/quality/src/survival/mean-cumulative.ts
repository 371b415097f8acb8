/** One unit's claims, as ages, and the age up to which it was watched (itself included). */
export type ClaimHistory = { readonly events: readonly number[]; readonly end: number };

export type CumulativeStep = {
  readonly time: number;
  /** Claims at this age; two on one unit on the same day are two. */
  readonly events: number;
  readonly atRisk: number;
  /** Mean number of claims a unit has had by this age (Nelson 1988). */
  readonly mean: number;
  /** As if claims came independently of each other. */
  readonly poissonError: number;
  /** Right also when some units claim again and again (Lawless and Nadeau 1995). */
  readonly robustError: number;
};

/** For all claims; Kaplan and Meier's curve is for the first one only. */
export const meanCumulative = (units: readonly ClaimHistory[]): readonly CumulativeStep[] => {
  const times = [...new Set(units.flatMap(({ events }) => events))].sort((a, b) => a - b);
  const apart = units.map(() => 0);
  let [total, poisson] = [0, 0];
  return times.map((time) => {
    const counts = units.map(({ events }) => events.filter((event) => event === time).length);
    const events = counts.reduce((all, count) => all + count, 0);
    const atRisk = units.filter(({ end }) => end >= time).length;
    total += events / atRisk;
    poisson += events / (atRisk * atRisk);
    for (const [at, unit] of units.entries()) {
      if (unit.end >= time) apart[at] = (apart[at] ?? 0) + ((counts[at] ?? 0) - events / atRisk) / atRisk;
    }
    const robust = apart.reduce((all, each) => all + each * each, 0);
    return {
      time,
      events,
      atRisk,
      mean: total,
      poissonError: Math.sqrt(poisson),
      robustError: Math.sqrt(robust),
    };
  });
};
