import type { Told } from '@libs/plant';
import { Problem } from './problem';
import { rejected } from './rejected';

/** The plant's answer, or its rejection as a problem. */
export const recorded = async <A>(told: Promise<Told<A>>): Promise<A> => {
  const outcome = await told;
  if (outcome.ok) return outcome.answer;
  throw rejected(outcome.rejection);
};

/** A question about something nobody knows is answered 404, naming what was asked for. */
export const found = <A>(answer: A | undefined, name: string, value: string): A => {
  if (answer !== undefined) return answer;
  throw new Problem({
    status: 404,
    code: `${name}-unknown`,
    title: `Nothing is known under this ${name}`,
    detail: `${value} was never ordered or recorded here.`,
    errors: [{ pointer: `#/path/${name}`, detail: `${value} is not known` }],
  });
};
