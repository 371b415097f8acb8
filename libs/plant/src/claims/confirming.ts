import type { BodyOf } from '@libs/contracts';
import type { AnyPart } from '@libs/ledger';
import { CLAIM } from '@libs/record';
import type { Claim } from '@libs/record';
import type { Cause } from '@libs/tracing';
import type { Asked } from '../questions/asked';
import { arrivalOf, arrived, rejected, unitPart } from '../telling';
import type { Arrival } from '../telling';
import type { Tellings } from '../told';
import { unitOf } from '../units';
import type { Workings } from '../workings';
import { claimPart, claimTold, sealed } from './tellings';
import { causeOfClaim } from './tracing';

type Confirming = BodyOf<'causeConfirmation'>;
type Confirmed = { readonly opened: NonNullable<Claim['opened']>; readonly cause: Cause };

/**
 * One commit: what caused it, said on the claim, and the escape charged to the station it came from. Where the plant
 * has charged the very same defect of this section before, it is not counted twice.
 */
export const tellCauseConfirmation =
  (workings: Workings, asked: Asked): Tellings['causeConfirmation'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'causeConfirmation', body, sender, params });
    const claim = params['claim'] ?? '';
    const { opened } = await workings.ledger.state(CLAIM, claim);
    if (opened === null) return rejected({ code: 'claim-unknown', claim }, body);
    const cause = await causeOfClaim(asked, claim, body.cause);
    if (cause === undefined) return rejected({ code: 'cause-unknown', cause: body.cause }, body);

    const charged = body.charge ? await escapePart(workings, arrival, { opened, cause }) : [];
    return claimTold(workings, arrival, claim, [said(workings, arrival, claim, cause), ...charged]);
  };

const said = (workings: Workings, arrival: Arrival<Confirming>, claim: string, cause: Cause): AnyPart => {
  const { cause: key, note: text } = arrival.body;
  const { operation, outside, factor, value } = cause;
  const note = text === undefined ? {} : { note: sealed(workings, arrival, { claim, field: 'note', text }) };
  const data = { claim, cause: key, operation, outside, factor, value, ...note };
  return claimPart(workings, claim, { type: 'ConfirmCause', data }, null);
};

const escapePart = async (
  workings: Workings,
  arrival: Arrival,
  { opened, cause }: Confirmed,
): Promise<readonly AnyPart[]> => {
  const { component, symptom, home, section } = opened;
  const { operation } = cause;
  const serial = section ?? home;
  if (operation === null || (await isCharged(workings, { serial, component, symptom, operation }))) return [];

  return [
    unitPart(
      workings,
      await unitOf(workings, serial),
      {
        type: 'RecordDefect',
        data: {
          serial,
          defect: `${arrival.sender.key}-escape`,
          class: 'nonconformance',
          component,
          symptom,
          operation,
          place: opened.place,
          // Found where somebody lives: no station of ours.
          foundAt: null,
          photos: [],
          quantity: 1,
          hold: false,
        },
      },
      arrived(arrival),
    ),
  ];
};

type Escape = {
  readonly serial: string;
  readonly component: string;
  readonly symptom: string;
  readonly operation: string;
};

const isCharged = async ({ views }: Workings, { serial, ...what }: Escape): Promise<boolean> => {
  const rows = await views.defects({ serial }, { from: '0000-00-00', to: '9999-99-99' }, DEFECTS_OF_UNIT);
  return rows.some(
    (row) =>
      row.foundAt === null &&
      row.operation === what.operation &&
      row.component === what.component &&
      row.symptom === what.symptom,
  );
};
const DEFECTS_OF_UNIT = 500;
