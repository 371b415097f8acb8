import type { Codes } from '@libs/record';
import type { Rulebook } from '@libs/rulebook';

const KNOWN = new WeakMap<Rulebook, Codes>();

/** The codes a rulebook knows, worked out once a rulebook. */
export const codesOf = (rulebook: Rulebook): Codes => {
  const known = KNOWN.get(rulebook);
  if (known !== undefined) return known;

  const codes: Codes = {
    operations: idsOf(rulebook.operations),
    stations: idsOf(rulebook.stations),
    places: idsOf(rulebook.places),
    components: idsOf(rulebook.components),
    symptoms: idsOf(rulebook.symptoms),
    reasons: idsOf(rulebook.reasons),
    likelyCause: likelyCause(rulebook),
  };
  KNOWN.set(rulebook, codes);
  return codes;
};

const idsOf = (named: readonly { readonly id: string }[]): ReadonlySet<string> =>
  new Set(named.map(({ id }) => id));

/** The fault map lists the likeliest cause first; what the design does not have cannot be one. */
const likelyCause = ({ faults }: Rulebook): Codes['likelyCause'] => {
  const causes = new Map(
    faults.map((fault) => [
      `${fault.component} ${fault.symptom}`,
      fault.causes.map(({ operation }) => operation),
    ]),
  );
  return (component, symptom, plan) =>
    causes.get(`${component} ${symptom}`)?.find((cause) => plan.operations[cause] !== undefined) ?? null;
};
