import type { BodyOf } from '@libs/contracts';
import type { Design, Deviation } from '@libs/judge';
import type { AnyPart } from '@libs/ledger';
import { HOME, SECTION } from '@libs/record';
import type { Unit, UnitCommand } from '@libs/record';
import { compileCell } from '@libs/rulebook';
import { workAnswer } from './answers';
import type { UnitRef, Wanted } from './wanted';
import type { Tellings, Told } from './told';
import { arrivalOf, arrived, askLedger, rejected, sealedNote, unitPart } from './telling';
import type { Arrival, When } from './telling';
import type { Workings } from './workings';

export const orderChangeTellings = (workings: Workings): Pick<Tellings, 'orderChange' | 'deviation'> => ({
  orderChange: tellOrderChange(workings),
  deviation: tellDeviation(workings),
});

type Noted = Arrival<When & { readonly note?: string | undefined; readonly [field: string]: unknown }>;

/** The home and all its sections, in one commit: no half of a home is built by another order than its fellow. */
const tellOrderChange =
  (workings: Workings): Tellings['orderChange'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'orderChange', body, sender, params });
    const home = await workings.ledger.state(HOME, body.home);
    const sections = await sectionsOf(workings, home);
    const changed = sections.map((unit) => ({ unit, design: changedDesign(unit, body) }));
    const unfit =
      strangerIn(body, home) ??
      designUnfit(
        workings,
        changed.map(({ unit, design }) => [unit, design] as const),
      );
    if (unfit !== undefined) return unfit;

    return toWholeHome(workings, arrival, [
      changeOf(home, { ...home.design, ...body.design }),
      ...changed.map(({ unit, design }) => changeOf(unit, design)),
    ]);
  };

const sectionsOf = async ({ ledger }: Workings, home: Unit): Promise<readonly Unit[]> => {
  const units: Unit[] = [];
  for (const serial of home.sections) units.push(await ledger.state(SECTION, serial));
  return units;
};

const changedDesign = (unit: Unit, { design, sections }: BodyOf<'orderChange'>): Design => ({
  ...unit.design,
  ...design,
  ...sections.find(({ serial }) => serial === unit.serial)?.design,
});

const strangerIn = ({ sections }: BodyOf<'orderChange'>, home: Unit): Told<never> | undefined => {
  const at = sections.findIndex(({ serial }) => !home.sections.includes(serial));
  const serial = sections[at]?.serial;
  return serial === undefined
    ? undefined
    : { ok: false, rejection: { code: 'section-unknown', pointer: `/sections/${at}/serial`, serial } };
};

/** By the revision the home is judged by; before it is on the line, by the one in force. */
const designUnfit = (
  { plans }: Workings,
  changed: readonly (readonly [Unit, Design])[],
): Told<never> | undefined => {
  for (const [unit, design] of changed) {
    const revision = unit.revision ?? plans.current()?.revision;
    const resolved = revision === undefined ? undefined : plans.tryPlanFor(revision, design);
    const [problem] = resolved?.ok === false ? resolved.problems : [];
    if (problem === undefined) continue;
    const pointer = problem.column === null ? '/design' : `/design/${problem.column}`;
    return { ok: false, rejection: { code: 'design-unfit', pointer, says: problem.says } };
  }
  return undefined;
};

type Change = { readonly unit: Unit; readonly command: UnitCommand; readonly wanted: Partial<Wanted> };

const changeOf = (unit: Unit, design: Design): Change => ({
  unit,
  command: { type: 'ChangeOrder', data: { serial: unit.serial, design } },
  wanted: { changesTo: { design } },
});

const toWholeHome = async (
  workings: Workings,
  arrival: Noted,
  changes: readonly Change[],
): Promise<Awaited<ReturnType<Tellings['orderChange']>>> => {
  const [home] = changes;
  const outcome = await askLedger(
    workings,
    arrival,
    changes.map((change) => partFor(workings, arrival, change)),
  );
  if (!outcome.ok || home === undefined) {
    return rejected(outcome.ok ? { code: 'section-unknown' } : outcome.rejection, arrival.body);
  }
  return { ok: true, answer: await workAnswer(workings, outcome, refOf(home.unit)) };
};

const refOf = ({ kind, serial }: Unit): UnitRef => ({ kind: kind === 'home' ? 'home' : 'section', serial });

const partFor = (workings: Workings, arrival: Noted, { unit, command, wanted }: Change): AnyPart => {
  const ref = refOf(unit);
  const noted = { ...command, data: { ...command.data, ...sealedNote(workings, arrival, ref) } };
  return unitPart(workings, ref, asSame(noted, command), {
    ...arrived(arrival),
    ...wanted,
    part: `-${unit.serial}`,
  });
};

/** A note added changes nothing of what a command is; the compiler cannot follow that through a union. */
const asSame = (noted: object, _command: UnitCommand): UnitCommand => noted as UnitCommand;

/** For the home and each of its sections: whichever of them the operation is done on. */
const tellDeviation =
  (workings: Workings): Tellings['deviation'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'deviation', body, sender, params });
    const deviation = deviationOf(body, `${sender.key}-0`);
    if (!deviation.ok) return deviation;
    const home = await workings.ledger.state(HOME, body.home);
    const units = [home, ...(await sectionsOf(workings, home))];
    if (home.kind === 'unknown') return rejected({ code: 'section-unknown', serial: body.home }, body);

    return toWholeHome(
      workings,
      arrival,
      units.map((unit): Change => ({
        unit,
        command: {
          type: 'ApproveDeviation',
          data: { serial: unit.serial, deviation: deviation.deviation },
        },
        wanted: { changesTo: { deviations: [...unit.deviations, deviation.deviation] } },
      })),
    );
  };

type Compiled = { readonly ok: true; readonly deviation: Deviation } | (Told<never> & { readonly ok: false });

const deviationOf = (body: BodyOf<'deviation'>, id: string): Compiled => {
  const { operation, reference, allows } = body;
  const deviation = { deviation: id, operation, reference };
  if (allows.what === 'lot') return { ok: true, deviation: { ...deviation, allows } };

  const cell = compileCell(allows.required);
  return cell.ok
    ? { ok: true, deviation: { ...deviation, allows: { ...allows, test: cell.test } } }
    : { ok: false, rejection: { code: 'cell-unfit', pointer: '/allows/required', says: cell.says } };
};
