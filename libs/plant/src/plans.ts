import type { CompiledPlan, Design, Deviation } from '@libs/judge';
import { withDeviations } from '@libs/judge';
import type { Json, JsonObject } from '@libs/kernel';
import { canonicalJson, elapsedMs } from '@libs/kernel';
import { planDigest, readRulebook, resolvePlan } from '@libs/rulebook';
import type { Rulebook, RulebookFiles, RulebookProblem } from '@libs/rulebook';
import { createHash } from 'node:crypto';
import { homePlan } from './home-plan';

export const sha256Hex = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

/** A revision as issued: what the `rulebook` stream holds of it. */
export type IssuedRevision = {
  readonly revision: number;
  readonly effectiveFrom: string;
  readonly files: RulebookFiles;
};

export type KnownRevision = {
  readonly revision: number;
  readonly effectiveFrom: string;
  readonly rulebook: Rulebook;
};

export type ResolvedPlan =
  | { readonly ok: true; readonly plan: CompiledPlan }
  | { readonly ok: false; readonly problems: readonly RulebookProblem[] };

/** Every revision this plant has issued, read once, and the build plans resolved from them so far. */
export type Plans = {
  /** The revision issued last; null while the plant has none. */
  readonly current: () => KnownRevision | null;
  /** The one issued last of those effective at an instant; null: none is. */
  readonly inForce: (instant: string) => KnownRevision | null;
  readonly ofRevision: (revision: number) => KnownRevision | undefined;
  /** Throws when the revision or the design is unknown: whoever ordered the home has checked both. */
  readonly planFor: (revision: number, design: Design) => CompiledPlan;
  /** The same, for a design that nobody has checked yet. */
  readonly tryPlanFor: (revision: number, design: Design) => ResolvedPlan;
  /** The plan of a home at its site: see `homePlan`. Sections of one home share all but what is a section's own. */
  readonly planForHome: (revision: number, home: Design, sections: readonly Design[]) => CompiledPlan;
  /** A plan with what is approved for one home alone. */
  readonly deviated: (plan: CompiledPlan, deviations: readonly Deviation[]) => CompiledPlan;
  /** Takes in a revision from the ledger. Safe to call twice. */
  readonly learn: (issued: IssuedRevision) => void;
};

/** A plant builds a few designs at a time; the oldest plan goes when a new one would be one too many. */
const PLANS_KEPT = 500;

export const plansOf = (): Plans => {
  const revisions = new Map<number, KnownRevision>();
  const resolved = new Map<string, CompiledPlan>();
  const remembered = new WeakMap<Design, CompiledPlan>();
  let latest: KnownRevision | null = null;

  const learn = (issued: IssuedRevision): void => {
    if (revisions.has(issued.revision)) return;
    const known = read(issued);
    revisions.set(issued.revision, known);
    if (latest === null || latest.revision < known.revision) latest = known;
  };

  const tryPlanFor = (revision: number, design: Design): ResolvedPlan => {
    const key = `${revision} ${canonicalJson(designJson(design))}`;
    const kept = resolved.get(key);
    if (kept !== undefined) return { ok: true, plan: kept };

    const known = revisions.get(revision);
    if (known === undefined) throw new Error(`Rulebook revision ${revision} is not in the ledger`);
    const answer = resolvePlan(known.rulebook, revision, design, sha256Hex);
    if (answer.ok) keep(resolved, key, answer.plan);
    return answer;
  };

  /** The writer asks with the very design object of a cached state: no need to spell it out each time. */
  const planFor = (revision: number, design: Design): CompiledPlan => {
    const last = remembered.get(design);
    if (last?.revision === revision) return last;

    const answer = tryPlanFor(revision, design);
    if (answer.ok) {
      remembered.set(design, answer.plan);
      return answer.plan;
    }
    throw new Error(`No build plan by revision ${revision}: ${answer.problems.map(inOneLine).join('; ')}`);
  };

  return {
    current: () => latest,
    inForce: (instant) => effectiveAt([...revisions.values()], instant),
    ofRevision: (revision) => revisions.get(revision),
    planFor,
    planForHome: homePlans(planFor),
    tryPlanFor,
    deviated: deviatedPlans(),
    learn,
  };
};

/** One plan a home, as long as its design is the very object that was asked with. */
const homePlans = (planFor: Plans['planFor']): Plans['planForHome'] => {
  const homes = new WeakMap<Design, CompiledPlan>();
  const resolved = new Map<string, CompiledPlan>();
  return (revision, home, sections) => {
    const last = homes.get(home);
    if (last?.revision === revision) return last;

    const ofSections = sections.map((design) => planFor(revision, design));
    const ofHome = planFor(revision, home);
    // Many homes are built alike: a history of them is judged by few plans.
    const key = [ofHome, ...ofSections].map(({ digest }) => digest).join(' ');
    const plan = resolved.get(key) ?? homePlan(ofHome, ofSections, digestOf);
    if (!resolved.has(key)) keep(resolved, key, plan);
    homes.set(home, plan);
    return plan;
  };
};

const read = ({ revision, effectiveFrom, files }: IssuedRevision): KnownRevision => {
  const answer = readRulebook(files);
  if (answer.ok) return { revision, effectiveFrom, rulebook: answer.rulebook };
  throw new Error(`Rulebook revision ${revision}: ${answer.problems.map(inOneLine).join('; ')}`);
};

const effectiveAt = (all: readonly KnownRevision[], instant: string): KnownRevision | null =>
  all.reduce<KnownRevision | null>(
    (last, one) =>
      elapsedMs(one.effectiveFrom, instant) >= 0 && (last === null || last.revision < one.revision)
        ? one
        : last,
    null,
  );

/** Few homes have any; each is worked out once for the very list its state holds. */
const deviatedPlans = (): Plans['deviated'] => {
  const known = new WeakMap<CompiledPlan, WeakMap<readonly Deviation[], CompiledPlan>>();
  return (plan, deviations) => {
    if (deviations.length === 0) return plan;
    const ofPlan = known.get(plan) ?? new WeakMap<readonly Deviation[], CompiledPlan>();
    known.set(plan, ofPlan);
    const deviated = ofPlan.get(deviations) ?? withDeviations(plan, deviations, digestOf);
    ofPlan.set(deviations, deviated);
    return deviated;
  };
};

const keep = (resolved: Map<string, CompiledPlan>, key: string, plan: CompiledPlan): void => {
  const [oldest] = resolved.keys();
  if (resolved.size >= PLANS_KEPT && oldest !== undefined) resolved.delete(oldest);
  resolved.set(key, plan);
};

export const inOneLine = ({ file, row, column, says }: RulebookProblem): string =>
  `${file}, row ${row}${column === null ? '' : `, column ${column}`}: ${says}`;

const digestOf = (plan: Omit<CompiledPlan, 'digest'>): string => planDigest(plan, sha256Hex);

const designJson = (design: Design): JsonObject =>
  ({ ...design }) satisfies { readonly [name: string]: Json };
