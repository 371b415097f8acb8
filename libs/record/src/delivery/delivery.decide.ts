import { accept, reject } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type { DeliveryEvent, DeliveryRecorded, RecordedDeliveryEvent } from './delivery.events';

export type DeliveryCommand = { readonly type: 'RecordDelivery'; readonly data: DeliveryRecorded['data'] };
export type DeliveryRejection = { readonly code: 'home-unknown'; readonly home: string };
export type DeliveryFacts = { readonly homeKnown: boolean };
/** Null until somebody told. */
export type Delivery = DeliveryRecorded['data'] | null;

export const decide = (
  { data }: DeliveryCommand,
  _state: Delivery,
  { homeKnown }: DeliveryFacts,
): Decision<DeliveryEvent, DeliveryRejection> =>
  homeKnown ? accept({ type: 'DeliveryRecorded', data }) : reject({ code: 'home-unknown', home: data.home });

/** An address told once stays until another is told: a hauler named later must not wipe it out. */
export const evolve = (state: Delivery, { data }: RecordedDeliveryEvent): Delivery =>
  state?.address === undefined ? data : { address: state.address, ...data };

export const DELIVERY: StreamKind<
  DeliveryCommand,
  Delivery,
  DeliveryEvent,
  DeliveryRejection,
  DeliveryFacts
> = { name: 'delivery', initial: null, decide, evolve };
