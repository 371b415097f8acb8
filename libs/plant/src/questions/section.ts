import { blockedBy, holdSays, operationCard } from '@libs/contracts';
import type { AnswerOf, OperationCardOf } from '@libs/contracts';
import { carriedOpen, standings } from '@libs/judge';
import type { CompiledPlan } from '@libs/judge';
import { LOT, PLANT, STATION, isUsableLot } from '@libs/record';
import type { Unit } from '@libs/record';
import type { Names } from '../names';
import type { Asked } from './asked';
import { dayAt } from './days';
import { defectCard } from './defect-card';
import { designFacts } from './design-facts';
import { subjectOf } from './subject';
import type { Subject } from './subject';

type SectionAnswer = AnswerOf<'section'>;

/** Everything in the plan, whatever the station. */
const ALL = 'all';

/** The station screen's one read: what is due on this serial, to what values, and what blocks it. */
export const sectionQuestion =
  (asked: Asked) =>
  async (serial: string, at: string | null): Promise<SectionAnswer | undefined> => {
    const position = await asked.ledger.head();
    const subject = await subjectOf(serial, asked);
    if (subject === undefined) return undefined;

    const { unit, plan, state } = subject;
    const station = at ?? whereabouts(unit, plan);
    const here = station === ALL ? unit.station : station;
    const names = asked.names.ofRevision(unit.revision);
    return {
      ...headOf(subject),
      position,
      at: station,
      facts: designFacts(unit.design, here, rulebookOf(unit, asked), names),
      blocked: plan === null || here === null ? null : blockedBy(plan, state, here, names),
      operations: cardsOf(
        subject,
        asked,
        here,
        (operation) => station === ALL || operation.station === station,
      ),
      carried: carriedCards(subject, asked, here),
      defects: await openDefects(subject, asked, names),
      holds: state.holds.map((hold) => ({ ...hold, says: holdSays(hold, names) })),
      lots: here === null ? [] : await mountedAt(here, asked),
    };
  };

const headOf = ({
  unit,
  sections,
  plan,
}: Subject): Pick<
  SectionAnswer,
  | 'serial'
  | 'home'
  | 'model'
  | 'sections'
  | 'stage'
  | 'station'
  | 'since'
  | 'label'
  | 'revision'
  | 'planDigest'
  | 'design'
> => ({
  serial: unit.serial,
  home: unit.home,
  model: unit.model,
  sections: sections.map(({ serial, design }) => ({ serial, role: design['role'] ?? null })),
  stage: unit.stage,
  station: unit.station,
  since: unit.since,
  label: unit.label,
  revision: unit.revision,
  planDigest: unit.revision === null ? null : (plan?.digest ?? null),
  design: { ...unit.design },
});

/** A home is at its site; so is a section that has left the plant. */
const whereabouts = (unit: Unit, plan: CompiledPlan | null): string | null =>
  unit.station ??
  (unit.kind === 'home' || unit.stage === 'shipped'
    ? (plan?.stations.find(({ kind }) => kind === 'site')?.id ?? null)
    : null);

const rulebookOf = ({ revision }: Unit, { plans }: Asked): Parameters<typeof designFacts>[2] =>
  (revision === null ? undefined : plans.ofRevision(revision))?.rulebook ?? plans.current()?.rulebook;

const cardsOf = (
  { plan, state, unit }: Subject,
  { names }: Asked,
  at: string | null,
  wanted: (operation: CompiledPlan['operations'][string]) => boolean,
): OperationCardOf[] => {
  if (plan === null) return [];
  return standings(plan, state, at).flatMap((standing) => {
    const operation = plan.operations[standing.operation];
    return operation === undefined || !wanted(operation)
      ? []
      : [
          operationCard(operation, standing, {
            plan,
            state,
            serial: unit.serial,
            person: names.person,
            text: names.ofRevision(unit.revision).text,
          }),
        ];
  });
};

const carriedCards = (subject: Subject, asked: Asked, at: string | null): OperationCardOf[] => {
  const { plan, state } = subject;
  if (plan === null || at === null) return [];
  const open = new Set(carriedOpen(plan, state, at));
  return cardsOf(subject, asked, at, ({ id }) => open.has(id));
};

/** The views are committed with the events, so whatever is open in the state has a row. */
const openDefects = async (
  { unit, home, state }: Subject,
  { views }: Asked,
  names: Names,
): Promise<SectionAnswer['defects']> => {
  const serials = unit === home ? [home.serial, ...home.sections] : [unit.serial, home.serial];
  const rows = await Promise.all(
    serials.map((serial) =>
      views.defects({ serial }, { from: '0000-00-00', to: '9999-99-99' }, DEFECTS_OF_UNIT),
    ),
  );
  const open = new Set(state.defects.map(({ defect }) => defect));
  return rows
    .flat()
    .filter(({ defect }) => open.has(defect))
    .map((row) => defectCard(row, names));
};

/** No section that may be shipped has more. */
const DEFECTS_OF_UNIT = 500;

const mountedAt = async (station: string, { ledger, clock }: Asked): Promise<SectionAnswer['lots']> => {
  const { mounted } = await ledger.state(STATION, station);
  const { opened } = await ledger.state(PLANT, 'plant');
  const day = dayAt(clock(), opened?.zone ?? 'UTC');
  const lots: SectionAnswer['lots'] = [];
  for (const [kind, lot] of Object.entries(mounted)) {
    lots.push({ lot, kind, usable: isUsableLot(await ledger.state(LOT, lot), day) });
  }
  return lots;
};
