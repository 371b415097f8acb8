import type { AnswerOf } from '@libs/contracts';
import { causeSays, confidenceSays, exposureReasonSays, verdictSays } from '@libs/contracts';
import { causeKey, exposureOf, trace } from '@libs/tracing';
import type { Cause, ClaimRow, ExposureMethod, HomeRow, Trace, TraceInput } from '@libs/tracing';
import type { Asked } from '../questions/asked';
import { claimsOf, evidenceSays, nextSays } from './evidence-says';
import { traceInput } from './rows';
import { todayAt } from './today';

type TraceAnswer = AnswerOf<'trace'>;
type Traced = { readonly input: TraceInput; readonly trace: Trace; readonly position: number };

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
  const counted = compared(input, found);
  const [part, shows] = [names.component(component), names.symptom(symptom)];
  return {
    claim,
    component,
    symptom,
    says: { en: `${part.en}: ${shows.en}`, es: `${part.es}: ${shows.es}` },
    asOf: found.asOf,
    position,
    claims: likeClaims(input).map((one) => ({ claim: one.claim, home: one.home, section: one.section })),
    unplaced: [...found.unplaced],
    ...counted,
    looked: found.looked,
    noCommonCause: found.noCommonCause,
    verdict: found.verdict,
    verdictSays: verdictSays(found.verdict),
    candidates: found.candidates.map((candidate) => candidateAnswer(candidate, asked, counted.unit)),
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

const likeClaims = ({ claims, component, symptom }: TraceInput): readonly ClaimRow[] =>
  claims.filter((one) => one.component === component && one.symptom === symptom);

const isLivedIn = ({ where, occupiedOn }: HomeRow, asOf: string): boolean =>
  where === 'sold' && (occupiedOn === null || occupiedOn <= asOf);

/** What the counts count: sections where every like claim of a known home names one, else homes. And homes besides. */
const compared = (input: TraceInput, { units }: Trace): Pick<TraceAnswer, 'unit' | 'units' | 'homes'> => {
  const byHome = new Map(input.homes.map((home) => [home.home, home]));
  const placed = likeClaims(input).filter(({ home }) => byHome.has(home));
  const namesSection = ({ home, section }: ClaimRow): boolean =>
    byHome.get(home)?.sections.some(({ serial }) => serial === section) === true;
  const claimed = new Set(placed.map(({ home }) => home));
  const lived = input.homes.filter((home) => claimed.has(home.home) || isLivedIn(home, input.asOf));
  return {
    unit: placed.length > 0 && placed.every(namesSection) ? 'section' : 'home',
    units,
    homes: { claimed: claimed.size, of: lived.length },
  };
};

/** A cause of the claim's trace as it stands now, by its key. */
export const causeOfClaim = async (asked: Asked, claim: string, key: string): Promise<Cause | undefined> =>
  (await traced(asked, claim))?.trace.candidates.find((one) => one.key === key)?.cause;

const candidateAnswer = (
  candidate: Trace['candidates'][number],
  { names }: Asked,
  unit: TraceAnswer['unit'],
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
    says: evidenceSays(one, unit),
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
  const claimed = claimsByHome(input);
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
      claims: [...(claimed.get(home.home) ?? [])],
      reasonSays: exposureReasonSays(home.reason),
    })),
    counts: { line: at('line'), yard: at('yard'), sold: at('sold') },
  };
};

const claimsByHome = (input: TraceInput): ReadonlyMap<string, readonly string[]> => {
  const byHome = new Map<string, readonly string[]>();
  for (const { home, claim } of likeClaims(input)) byHome.set(home, [...(byHome.get(home) ?? []), claim]);
  return byHome;
};
