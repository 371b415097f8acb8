import type { AnswerOf, BodyOf } from '@libs/contracts';
import type { CompiledPlan } from '@libs/judge';
import type { Envelope, Meta, ReadStream } from '@libs/kernel';
import { partOf, typeOf } from '@libs/ledger';
import type { AnyPart } from '@libs/ledger';
import { HOME, SECTION } from '@libs/record';
import type { Applying, RevisionApplied, Unit } from '@libs/record';
import { kindOf, unitFacts, usedInstrument, workedLot } from '../facts';
import type { UnitRef, Wanted } from '../wanted';
import { namesOf } from '../names';
import { inOneLine } from '../plans';
import type { Sender, Told } from '../told';
import { arrivalOf, arrived, askLedger, rejected, sealedNote } from '../telling';
import type { Workings } from '../workings';
import { usedBy } from './recordings';
import { changesOfSections, inWords } from './section-changes';
import type { SectionChanges } from './section-changes';
import { now, targetOf } from './which';

type Applied = AnswerOf<'revisionApplication'>;

/** What it would change, for a person to look at before deciding. Undefined: nothing is known under that serial. */
export const previewRevision =
  (workings: Workings) =>
  async (serial: string, revision: number | null): Promise<Applied | undefined> => {
    const family = await workings.families.of(serial);
    const known = revision === null ? workings.plans.inForce(now(workings)) : { revision };
    const target = known === null ? undefined : await targetOf(workings, { revision: known.revision });
    if (family === undefined || target === undefined) return undefined;

    const sections = await changesOfSections(workings, target, family.sections);
    return { home: family.home, revision: target.revision, sections: [...sections] };
  };

/** All sections of a home that are on the line, and the home itself, in one commit: one revision judges them all. */
export const applyRevision =
  (workings: Workings) =>
  async (serial: string, body: BodyOf<'revisionApplication'>, sender: Sender): Promise<Told<Applied>> => {
    const family = await workings.families.of(serial);
    if (family === undefined) return { ok: false, rejection: { code: 'section-unknown', serial } };
    const refs: readonly UnitRef[] = [
      { kind: 'home', serial: family.home },
      ...family.sections.map((section) => ({ kind: 'section', serial: section }) as const),
    ];
    const unfit = await unfitFor(workings, family.sections, body.revision);
    if (unfit !== undefined) return unfit;

    const arrival = arrivalOf(workings, {
      route: 'revisionApplication',
      body: { ...body, via: 'tablet' as const },
      sender,
      params: { serial },
    });
    const outcome = await askLedger(
      workings,
      arrival,
      refs.map((ref, part) =>
        applyingPart(workings, ref, {
          wanted: { ...arrived(arrival), part: `-${part}` },
          revision: body.revision,
          note: sealedNote(workings, arrival, ref),
        }),
      ),
    );
    if (!outcome.ok) return rejected(outcome.rejection, body);
    return { ok: true, answer: answerOf(workings, family.home, body.revision, outcome.events) };
  };

/** One that is not effective yet, or that has no plan for a design, changes nothing at all. */
const unfitFor = async (
  workings: Workings,
  sections: readonly string[],
  revision: number,
): Promise<Told<never> | undefined> => {
  const known = workings.plans.ofRevision(revision);
  if (known === undefined) return { ok: false, rejection: { code: 'revision-unknown', revision } };
  if (Date.parse(known.effectiveFrom) > workings.clock()) {
    return { ok: false, rejection: { code: 'revision-not-in-force', revision } };
  }
  for (const serial of sections) {
    const { design, kind } = await workings.ledger.state(SECTION, serial);
    const plan = kind === 'section' ? workings.plans.tryPlanFor(revision, design) : undefined;
    if (plan?.ok === false) {
      const says = plan.problems.map(inOneLine).join('; ');
      return { ok: false, rejection: { code: 'design-unfit', serial, says } };
    }
  }
  return undefined;
};

type Asked = {
  readonly wanted: Wanted;
  readonly revision: number;
  readonly note: { readonly note?: string };
};

const applyingPart = ({ plans }: Workings, ref: UnitRef, { wanted, revision, note }: Asked): AnyPart =>
  partOf({
    kind: kindOf(ref),
    id: ref.serial,
    command: { type: 'ApplyRevision', data: { serial: ref.serial, revision, ...note } },
    facts: (read, meta) => {
      const applying = applyingIn(plans, ref, revision, { read, meta });
      return {
        ...unitFacts(plans, ref, wanted)(read, meta),
        ...(applying === undefined ? {} : { applying }),
      };
    },
  });

type Reading = { readonly read: ReadStream; readonly meta: Meta };

/** Undefined while something of it is still to be loaded: the writer asks again. */
const applyingIn = (
  plans: Workings['plans'],
  ref: UnitRef,
  revision: number,
  reading: Reading,
): Applying | undefined => {
  const unit = reading.read(kindOf(ref), ref.serial);
  if (unit.kind === 'unknown') return undefined;
  const plan = planIn(plans, unit, revision, reading.read);
  const { lots, instruments } = usedBy(unit);
  const lotsAt = new Map(lots.map((id) => [id, workedLot(reading, id)]));
  const instrumentsAt = new Map(instruments.map((id) => [id, usedInstrument(reading, id)]));
  return plan === undefined
    ? undefined
    : {
        plan,
        lot: (id) => lotsAt.get(id) ?? null,
        instrument: (id) => instrumentsAt.get(id) ?? null,
      };
};

const planIn = (
  plans: Workings['plans'],
  unit: Unit,
  revision: number,
  read: ReadStream,
): CompiledPlan | undefined => {
  const { deviations } = unit;
  if (unit.kind === 'section') return plans.deviated(plans.planFor(revision, unit.design), deviations);
  const sections = unit.sections
    .map((serial) => read(SECTION, serial))
    .filter(({ kind }) => kind === 'section');
  if (sections.length < unit.sections.length) return undefined;
  const designs = sections.map(({ design }) => design);
  return plans.deviated(plans.planForHome(revision, unit.design, designs), deviations);
};

const answerOf = (
  workings: Workings,
  home: string,
  revision: number,
  events: readonly Envelope[],
): Applied => {
  const known = workings.plans.ofRevision(revision);
  const names = known === undefined ? workings.names.current() : namesOf(known.rulebook);
  const sections = events
    .filter(
      ({ schema, stream }) => typeOf(schema) === 'RevisionApplied' && !stream.startsWith(`${HOME.name}/`),
    )
    .map((event): SectionChanges => {
      const data = appliedIn(event);
      return {
        serial: data.serial,
        home,
        station: event.station,
        revision: data.to,
        unfit: null,
        ...inWords(data, NO_PLAN, names),
      };
    });
  return { home, revision, sections };
};

/** Only kinds of values are asked of it, and a measure says itself. */
const NO_PLAN: Pick<CompiledPlan, 'operations'> = { operations: {} };

/** The event's type has said already what its data are. */
const appliedIn = ({ data }: Envelope): RevisionApplied['data'] => data as unknown as RevisionApplied['data'];
