import type { Unit } from '@libs/record';
import { kindOf } from './facts';
import type { UnitRef } from './wanted';
import type { Workings } from './workings';

/** A serial nobody ordered is taken for a section's: its decider says that it is unknown. */
const asSection = (serial: string): UnitRef => ({ kind: 'section', serial });

/** The unit a serial names. The only section of a home goes by the home's serial too. */
export const unitOf = async ({ families }: Workings, serial: string): Promise<UnitRef> => {
  const family = await families.of(serial);
  return family === undefined ? asSection(serial) : { kind: family.kind, serial };
};

export const sectionOf = async ({ families }: Workings, serial: string): Promise<UnitRef> => {
  const family = await families.of(serial);
  const [only, ...others] = family?.kind === 'home' ? family.sections : [];
  return asSection(only === undefined || others.length > 0 ? serial : only);
};

/** Where an operation is recorded: work at the site belongs to the home, whichever half's label was scanned. */
export const unitFor = async (workings: Workings, serial: string, operation: string): Promise<UnitRef> => {
  const family = await workings.families.of(serial);
  if (family === undefined) return asSection(serial);
  if (scopeOf(workings, operation) === 'home') return { kind: 'home', serial: family.home };
  if (family.kind === 'section') return asSection(serial);

  const [only, ...others] = family.sections;
  return only === undefined || others.length > 0 ? { kind: 'home', serial } : asSection(only);
};

/** An operation keeps its scope from one revision to the next; the latest knows them all. */
const scopeOf = ({ plans }: Workings, operation: string): 'section' | 'home' | undefined =>
  plans.current()?.rulebook.operations.find(({ id }) => id === operation)?.scope;

/** A station whose operations are the home's is signed off for the home. */
export const unitForStation = async (
  workings: Workings,
  serial: string,
  station: string,
): Promise<UnitRef> => {
  const operations = workings.plans.current()?.rulebook.operations ?? [];
  const first = operations.find((operation) => operation.station === station);
  return first === undefined ? unitOf(workings, serial) : unitFor(workings, serial, first.id);
};

/** The unit of this family that knows a defect or a hold; else the one whose serial it is. */
export const unitKnowing = async (
  workings: Workings,
  serial: string,
  knows: (unit: Unit) => boolean,
): Promise<UnitRef> => {
  const family = await workings.families.of(serial);
  if (family === undefined) return asSection(serial);

  const own: UnitRef = { kind: family.kind, serial };
  const others: readonly UnitRef[] =
    family.kind === 'section'
      ? [{ kind: 'home', serial: family.home }]
      : family.sections.map((section) => asSection(section));
  for (const ref of [own, ...others]) {
    if (knows(await workings.ledger.state(kindOf(ref), ref.serial))) return ref;
  }
  return own;
};
