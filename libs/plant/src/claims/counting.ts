import { COUNTING, DETERMINATION, dueOn, standingOn } from '@libs/record';
import type { Claim, CountingRule } from '@libs/record';
import type { AnswerOf } from '@libs/contracts';
import type { Asked } from '../questions/asked';
import { todayAt } from './today';

/** The rule by which days are counted stands in a stream of its own; no file is called so. */
export const COUNTING_STREAM = '(counting)';

export const countingIn = async ({ ledger }: Asked): Promise<CountingRule> =>
  (await ledger.state(DETERMINATION, COUNTING_STREAM)).counting ?? COUNTING;

/** What a claim's own thirty days are read from. */
export type Days = {
  readonly today: string;
  readonly counting: CountingRule;
  readonly files: ReadonlyMap<string, readonly File[]>;
};
type File = { readonly determination: string; readonly initialOn: string | null };

export const daysIn = async (asked: Asked): Promise<Days> => ({
  today: todayAt(asked),
  counting: await countingIn(asked),
  files: await filesByClaim(asked),
});

const filesByClaim = async ({ ledger, streamsOf }: Asked): Promise<Days['files']> => {
  const files = new Map<string, readonly File[]>();
  for (const stream of await streamsOf(DETERMINATION.name)) {
    const determination = stream.slice(DETERMINATION.name.length + 1);
    const { opened, initial } = await ledger.state(DETERMINATION, determination);
    const file = { determination, initialOn: initial[0]?.decidedOn ?? null };
    for (const claim of opened?.claims ?? []) files.set(claim, [...(files.get(claim) ?? []), file]);
  }
  return files;
};

/** Decided when it was said to be no failure, on the claim itself, or with the first determination of a file it is in. */
export const dueOf = (
  claim: string,
  { logged, dismissedOn, determined }: Claim,
  { today, counting, files }: Days,
): AnswerOf<'claim'>['due'] => {
  const day = dueOn('initial-determination', logged?.receivedOn ?? today, counting);
  const decided = [
    dismissedOn,
    determined?.decidedOn ?? null,
    ...(files.get(claim) ?? []).map(({ initialOn }) => initialOn),
  ];
  const doneOn = decided.filter((one) => one !== null).toSorted()[0] ?? null;
  return { day, doneOn, standing: standingOn(day, doneOn, today, counting) };
};
