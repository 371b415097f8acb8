import type { UnitCommand } from '@libs/record';
import { SERIAL } from './unit-plan';

export type Data<T extends UnitCommand['type']> = Extract<UnitCommand, { readonly type: T }>['data'];

/** Told of the section that all these examples are about. */
export const told = <T extends UnitCommand['type']>(type: T, data: Omit<Data<T>, 'serial'>): UnitCommand =>
  ({ type, data: { serial: SERIAL, ...data } }) as unknown as UnitCommand;
