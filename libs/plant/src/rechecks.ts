import type { Proof } from '@libs/judge';
import type { AnyPart } from '@libs/ledger';
import { HOME } from '@libs/record';
import type { UnitRef } from './wanted';
import { arrived, unitPart } from './telling';
import type { Arrival } from './telling';
import type { Workings } from './workings';

/**
 * Work recorded on a section may make good what its home's own record missed of it. Looked up before queuing, which
 * is soon enough: a hold placed meanwhile was placed knowing this section as it was, and stays.
 */
export const recheckParts = async (
  workings: Workings,
  arrival: Arrival,
  { kind, serial }: UnitRef,
  told: { readonly operations: readonly string[]; readonly proof: Proof },
): Promise<readonly AnyPart[]> => {
  const family = kind === 'section' ? await workings.families.of(serial) : undefined;
  if (family === undefined) return [];
  const { holds } = await workings.ledger.state(HOME, family.home);
  const missed = told.operations.filter((operation) =>
    holds.some((hold) => hold.operation === operation && hold.defect === null),
  );
  return missed.map((operation) =>
    unitPart(
      workings,
      { kind: 'home', serial: family.home },
      { type: 'RecheckHolds', data: { serial: family.home, operation, proof: told.proof } },
      { ...arrived(arrival), part: `-home-${operation}` },
    ),
  );
};
