import type { AnswerOf } from '@libs/contracts';
import { causeSays, confidenceSays, exposureReasonSays, verdictSays } from '@libs/contracts';
import { causeKey, exposureOf, trace } from '@libs/tracing';
import type { Cause, ExposureMethod, Trace, TraceInput } from '@libs/tracing';
import type { Asked } from '../questions/asked';
import { dayAt } from '../questions/days';
import { claimsOf, evidenceSays, nextSays } from './evidence-says';
import { traceInput } from './rows';

type TraceAnswer = AnswerOf<'trace'>;
type Traced = { readonly input: TraceInput; readonly trace: Trace; readonly position: number };

/** At the plant. */
export const todayAt = ({ plans, clock }: Asked): string =>
  dayAt(clock(), plans.current()?.rulebook.zone ?? 'UTC');

/** Undefined: no claim of that number, or nobody has said yet what failed. */
const traced = async (asked: Asked, claim: string): Promise<Traced | undefined> => {
  const gathered = await asked.gathering();
  const about = gathered.claims.get(claim);
  if (about === undefined) return undefined;
  const { component, symptom } = about;
  const input = traceInput(gathered, asked.plans, { component, symptom, asOf: todayAt(asked) });
  return { input, trace: trace(input), position: gathered.position };
};

export const traceQuestion =
  (asked: Asked) =>
  async (claim: string): Promise<TraceAnswer | undefined> => {
    const found = await traced(asked, claim);
    return found === undefined ? undefined : traceAnswer(claim, found, asked);
  };

const traceAnswer = (claim: string, { input, trace: found, position }: Traced, asked: Asked): TraceAnswer => {
  const names = asked.names.current();
  const { component, symptom, next } = found;
  const [part, shows] = [names.component(component), names.symptom(symptom)];
  return {
    claim,
    component,
    symptom,
    says: { en: `${part.en}: ${shows.en}`, es: `${part.es}: ${shows.es}` },
    asOf: found.asOf,
    position,
    claims: input.claims
      .filter((one) => one.component === component && one.symptom === symptom)
      .map((one) => ({ claim: one.claim, home: one.home })),
    unplaced: [...found.unplaced],
    units: found.units,
    looked: found.looked,
    noCommonCause: found.noCommonCause,
    verdict: found.verdict,
    verdictSays: verdictSays(found.verdict),
    candidates: found.candidates.map((candidate) => candidateAnswer(candidate, asked)),
    next:
      next === null
        ? null
        : {
            kind: next.kind,
            claim: 'claim' in next ? next.claim : null,
            says: nextSays(next, found, names),
          },
  };
};

const candidateAnswer = (
  candidate: Trace['candidates'][number],
  { names }: Asked,
): TraceAnswer['candidates'][number] => ({
  rank: candidate.rank,
  key: candidate.key,
  cause: candidate.cause,
  says: causeSays(candidate.cause, names.current()),
  confidence: candidate.confidence,
  word: candidate.word,
  confidenceSays: confidenceSays(candidate.word),
  tiedWith: [...candidate.tiedWith],
  evidence: candidate.evidence.map((one) => ({
    kind: one.kind,
    speaks: one.speaks,
    says: evidenceSays(one, names.current()),
    claims: [...claimsOf(one)],
    detail: one,
  })),
});

export const exposureQuestion =
  (asked: Asked) =>
  async (claim: string, key: string, method: ExposureMethod): Promise<AnswerOf<'exposure'> | undefined> => {
    const found = await traced(asked, claim);
    const cause = found?.trace.candidates.find((one) => one.key === key)?.cause;
    return found === undefined || cause === undefined
      ? undefined
      : exposed(claim, cause, { method, input: found.input, asked });
  };

type Exposing = { readonly method: ExposureMethod; readonly input: TraceInput; readonly asked: Asked };

const exposed = (claim: string, cause: Cause, { method, input, asked }: Exposing): AnswerOf<'exposure'> => {
  const homes = exposureOf(cause, input, method);
  const at = (where: string): number => homes.filter((home) => home.where === where).length;
  return {
    claim,
    cause: causeKey(cause),
    says: causeSays(cause, asked.names.current()),
    operation: cause.operation,
    method,
    homes: homes.map((home) => ({
      ...home,
      sections: [...home.sections],
      reasonSays: exposureReasonSays(home.reason),
    })),
    counts: { line: at('line'), yard: at('yard'), sold: at('sold') },
  };
};
