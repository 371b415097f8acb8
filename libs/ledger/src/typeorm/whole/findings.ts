import { failed } from '@libs/proof';
import type { FailedCode, Outcome, OutcomeValues, Place } from '@libs/proof';

/** More than this many differences say no more than that something has gone through all of it. */
const LIMIT = 200;

/** What is wrong with a ledger, gathered while it is read through. */
export type Findings = {
  readonly add: (code: FailedCode, place: Place, values?: OutcomeValues) => void;
  readonly all: () => readonly Outcome[];
};

export const findings = (): Findings => {
  const found: Outcome[] = [];
  let more = 0;
  return {
    add: (code, place, values) => {
      if (found.length < LIMIT) found.push(failed(code, place, values));
      else more += 1;
    },
    all: () => (more === 0 ? found : [...found, failed('more-failures', {}, { more })]),
  };
};
