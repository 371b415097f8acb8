import type { AnswerOf } from '@libs/contracts';
import { blockedBy, findingSays, namesFrom, operationCard } from '@libs/contracts';
import type { Names, OperationCardOf } from '@libs/contracts';
import { carriedOpen, judgeAsking, standings } from '@libs/judge';
import type { CompiledPlan, Finding } from '@libs/judge';
import type { Unsent } from '../queue/entry';
import { keptFact } from '../queue/store';
import type { Me, PlantFacts } from '../session/facts';
import { taken, toldIn, withQueue } from './judging';
import { keptKits, knownSection, mountedIn } from './kit';
import type { Known } from './kit';

export { refreshKit } from './kit';

type Section = AnswerOf<'section'>;
type Asked = AnswerOf<'asking'>;
type FindingSaid = Asked['findings'][number];

type Here = { readonly known: Known; readonly me: Me; readonly names: Names };

const namesOf = (plant: PlantFacts, plan: CompiledPlan | null): Names =>
  namesFrom(
    plant,
    (operation, characteristic) =>
      plan?.operations[operation]?.values.find((value) => value.characteristic === characteristic)?.label,
  );

/** What this device knows of a section, with what was told here and not sent yet. */
const hereOf = async (serial: string, queue: readonly Unsent[]): Promise<Here | undefined> => {
  const [found, me, plant] = await Promise.all([
    knownSection(serial),
    keptFact<Me>('me'),
    keptFact<PlantFacts>('plant'),
  ]);
  if (found === undefined || me === undefined || plant === undefined) return undefined;
  return { known: withQueue(found, queue, me), me, names: namesOf(plant, found.plan) };
};

const said = (findings: readonly Finding[], names: Names): FindingSaid[] =>
  findings.map(({ places, ...finding }) => ({
    ...finding,
    ...(places === undefined ? {} : { places: [...places] }),
    says: findingSays({ ...finding, ...(places === undefined ? {} : { places }) }, names),
  }));

const ALL = 'all';

const cardsOf = (
  here: Here,
  at: string | null,
  wanted: (operation: string) => boolean,
): OperationCardOf[] => {
  const { known, me, names } = here;
  const { plan, state, section, kit } = known;
  if (plan === null) return [];
  const person = (actor: string): string => (actor === me.actor ? me.name : (kit.people[actor] ?? actor));
  const shown = { plan, state, serial: section.serial, person, text: names.text };
  return standings(plan, state, at).flatMap((standing) => {
    const operation = plan.operations[standing.operation];
    return operation === undefined || !wanted(operation.id)
      ? []
      : [operationCard(operation, standing, shown)];
  });
};

/** The section as the server would show it, of what is known here. */
const sectionHere = async (
  serial: string,
  at: string | null,
  queue: readonly Unsent[],
): Promise<Section | undefined> => {
  const here = await hereOf(serial, queue);
  if (here === undefined) return undefined;
  const { plan, state, section, kit } = here.known;
  const station = at ?? section.station;
  const place = station === ALL ? section.station : station;
  const open = new Set(plan === null || place === null ? [] : carriedOpen(plan, state, place));
  return {
    ...section,
    at: station,
    blocked: plan === null || place === null ? null : blockedBy(plan, state, place, here.names),
    operations: cardsOf(here, place, (id) => station === ALL || plan?.operations[id]?.station === station),
    carried: cardsOf(here, place, (id) => open.has(id)),
    lots: mountedIn(kit, place).map(({ lot, kind, usable }) => ({ lot, kind, usable })),
  };
};

/** Where nobody answers: what this device can say itself; undefined where it can say nothing. */
export const answerHere = async (
  route: string,
  wanted: { readonly [name: string]: string | null | undefined },
  queue: readonly Unsent[],
): Promise<object | undefined> => {
  if (route === 'section') return sectionHere(wanted['serial'] ?? '', wanted['at'] ?? null, queue);
  if (route === 'line') return (await keptKits())[0]?.line;
  return undefined;
};

/** What there is to say of an entry before it is sent; null: this device does not know its section. */
export const judgedHere = async (
  entry: Unsent,
  queue: readonly Unsent[],
): Promise<readonly FindingSaid[] | null> => {
  const here = await hereOf(
    entry.body.serial ?? '',
    queue.filter(({ key }) => key !== entry.key),
  );
  if (here?.known.plan === undefined || here.known.plan === null) return null;
  const { me, names } = here;
  let { known } = here;
  const findings: Finding[] = [];
  const all = toldIn(entry, here.known.plan, known.state);
  if (all.length === 0) return null;
  for (const told of all) {
    const next = taken(known, told, me);
    findings.push(...next.findings);
    ({ known } = next);
  }
  return said(findings, names);
};

type Asking = {
  readonly serial: string;
  readonly operation: string;
  readonly except: readonly string[];
  readonly occurredAt: string;
};

/** "May I?", answered by this device; undefined: it does not know the section or its plan. */
export const askedHere = async (
  { serial, ...asking }: Asking,
  queue: readonly Unsent[],
): Promise<Asked | undefined> => {
  const here = await hereOf(serial, queue);
  if (here === undefined || here.known.plan === null) return undefined;
  const findings = judgeAsking(here.known.plan, here.known.state, asking);
  return {
    position: here.known.kit.position,
    events: [],
    repeated: false,
    serial,
    answer: findings.some(({ grade }) => grade === 'refuse') ? 'refused' : 'cleared',
    findings: said(findings, here.names),
  };
};
