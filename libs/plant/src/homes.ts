import type { BodyOf } from '@libs/contracts';
import type { Design } from '@libs/judge';
import type { AnyPart } from '@libs/ledger';
import { workAnswer } from './answers';
import type { Wanted } from './wanted';
import type { KnownRevision } from './plans';
import type { Tellings, Told } from './told';
import { arrivalOf, arrived, askLedger, rejected, unitPart } from './telling';
import { sectionOf } from './units';
import type { Workings } from './workings';

type Order = BodyOf<'home'>;

/** The home and its sections, in one commit. A design that no plan can be made of is not taken. */
export const tellHome =
  (workings: Workings): Tellings['home'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'home', body, sender, params });
    const current = workings.plans.current();
    if (current === null) return rejected({ code: 'no-revision-in-force' }, {});
    const unfit = serialTwice(body) ?? designUnfit(workings, body, current);
    if (unfit !== undefined) return unfit;

    const outcome = await askLedger(workings, arrival, orderParts(workings, body, current, arrived(arrival)));
    const ref = { kind: 'home', serial: body.home } as const;
    return outcome.ok
      ? { ok: true, answer: await workAnswer(workings, outcome, ref) }
      : rejected(outcome.rejection, body);
  };

const serialTwice = ({ sections }: Order): Told<never> | undefined => {
  const serials = sections.map(({ serial }) => serial);
  const index = serials.findIndex((serial, at) => serials.indexOf(serial) !== at);
  return index < 0
    ? undefined
    : {
        ok: false,
        rejection: {
          code: 'serial-twice',
          pointer: `/sections/${index}/serial`,
          serial: serials[index] ?? '',
        },
      };
};

/** How many sections a home has is told by its order; a rulebook that asks for it gets it from there. */
const SECTIONS = 'sections';

const homeDesign = ({ design, sections }: Order, { rulebook }: KnownRevision): Design =>
  rulebook.attributes.some(({ id }) => id === SECTIONS)
    ? { ...design, [SECTIONS]: design[SECTIONS] ?? String(sections.length) }
    : design;

const designUnfit = ({ plans }: Workings, order: Order, current: KnownRevision): Told<never> | undefined => {
  const home = homeDesign(order, current);
  if (home[SECTIONS] !== undefined && home[SECTIONS] !== String(order.sections.length)) {
    return unfitDesign(`/design/${SECTIONS}`, `${home[SECTIONS]}, and ${order.sections.length} are ordered`);
  }
  for (const [index, { design }] of order.sections.entries()) {
    const resolved = plans.tryPlanFor(current.revision, { ...home, ...design });
    const [problem] = resolved.ok ? [] : resolved.problems;
    if (problem === undefined) continue;

    const isOwn = problem.column !== null && problem.column in design;
    const under = isOwn ? `/sections/${index}/design` : '/design';
    return unfitDesign(problem.column === null ? under : `${under}/${problem.column}`, problem.says);
  }
  return undefined;
};

const unfitDesign = (pointer: string, says: string): Told<never> => ({
  ok: false,
  rejection: { code: 'design-unfit', pointer, says },
});

const orderParts = (
  workings: Workings,
  order: Order,
  current: KnownRevision,
  wanted: Wanted,
): readonly AnyPart[] => {
  const { home, model, destination } = order;
  const design = homeDesign(order, current);
  const sections = order.sections.map(({ serial }) => serial);
  return [
    unitPart(
      workings,
      { kind: 'home', serial: home },
      { type: 'OrderHome', data: { home, model, design, sections, destination } },
      wanted,
    ),
    ...order.sections.map((section) =>
      unitPart(
        workings,
        { kind: 'section', serial: section.serial },
        {
          type: 'OrderSection',
          data: { serial: section.serial, home, model, design: { ...design, ...section.design }, sections },
        },
        wanted,
      ),
    ),
  ];
};

/** The first section to enter the line starts its home, and with it the revision all of them are judged by. */
export const tellStart =
  (workings: Workings): Tellings['start'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'start', body, sender, params });
    const wanted = arrived(arrival);
    const ref = await sectionOf(workings, body.serial);
    const family = await workings.families.of(ref.serial);
    const home = family === undefined ? [] : [homePart(workings, family.home, wanted)];

    const outcome = await askLedger(workings, arrival, [
      ...home,
      unitPart(
        workings,
        ref,
        { type: 'StartSection', data: { serial: ref.serial, at: body.at } },
        { ...wanted, zones: {} },
      ),
    ]);
    return outcome.ok
      ? { ok: true, answer: await workAnswer(workings, outcome, ref) }
      : rejected(outcome.rejection, body);
  };

const homePart = (workings: Workings, home: string, wanted: Wanted): AnyPart =>
  unitPart(workings, { kind: 'home', serial: home }, { type: 'StartHome', data: { home } }, wanted);
