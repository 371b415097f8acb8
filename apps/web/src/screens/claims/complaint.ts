import type { SentBodyOf } from '@libs/contracts';
import type { Source } from './claim';

export type Failure = {
  readonly section: string;
  readonly component: string;
  readonly symptom: string;
  readonly place: string;
  readonly noticedOn: string;
};
export type Delivery = {
  readonly occupiedOn: string;
  readonly setOn: string;
  readonly retailer: string;
  readonly hauler: string;
  readonly installer: string;
  readonly address: string;
};
/** As far as it is filled in. */
export type Complaint = Failure &
  Delivery & {
    readonly receivedOn: string;
    readonly source: Source;
    readonly home: string;
    readonly words: string;
    readonly triage: 'later' | 'no-failure' | 'claim';
    readonly because: string;
  };

export const NO_FAILURE: Failure = { section: '', component: '', symptom: '', place: '', noticedOn: '' };
export const NO_DELIVERY: Delivery = {
  occupiedOn: '',
  setOn: '',
  retailer: '',
  hauler: '',
  installer: '',
  address: '',
};

export const newComplaint = (day: string): Complaint => ({
  ...NO_FAILURE,
  ...NO_DELIVERY,
  receivedOn: day,
  source: 'owner',
  home: '',
  words: '',
  triage: 'later',
  because: '',
});

export const isReady = (draft: Complaint): boolean => {
  if (draft.receivedOn === '') return false;
  if (draft.triage === 'no-failure') return draft.because.trim() !== '';
  return draft.triage === 'later' || (draft.home !== '' && isSaid(draft));
};

export const isSaid = ({ component, symptom }: Failure): boolean => component !== '' && symptom !== '';

const orNull = (text: string): string | null => (text.trim() === '' ? null : text.trim());

export const failureOf = ({ section, component, symptom, place, noticedOn }: Failure) => ({
  section: orNull(section),
  component,
  symptom,
  place: orNull(place),
  noticedOn: orNull(noticedOn),
});

export const deliveryOf = ({ occupiedOn, setOn, retailer, hauler, installer, address }: Delivery) => ({
  occupiedOn: orNull(occupiedOn),
  setOn: orNull(setOn),
  retailer: orNull(retailer),
  hauler: orNull(hauler),
  installer: orNull(installer),
  ...(address.trim() === '' ? {} : { address: address.trim() }),
});

export const isDelivered = (delivery: Delivery): boolean =>
  Object.values(deliveryOf(delivery)).some((value) => value !== null);

export const bodyOf = (draft: Complaint): SentBodyOf<'complaint'> => {
  const { receivedOn, source, triage, because } = draft;
  const words = draft.words.trim();
  return {
    receivedOn,
    source,
    home: orNull(draft.home),
    ...(words === '' ? {} : { words }),
    ...(triage === 'no-failure' ? { noFailureBecause: because.trim() } : {}),
    ...(triage === 'claim' ? { opened: failureOf(draft) } : {}),
    ...(triage === 'claim' && isDelivered(draft) ? { delivery: deliveryOf(draft) } : {}),
  };
};
