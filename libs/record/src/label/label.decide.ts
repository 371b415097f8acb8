import { accept, reject } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type { LabelCommand } from './label.commands';
import type { LabelEvent, RecordedLabelEvent } from './label.events';
import { unusedLabel } from './label.state';
import type { Label } from './label.state';

export type LabelRejection = {
  readonly code: 'label-already-used';
  readonly number: string;
  readonly serial: string;
};
/** A number is used once, whatever else is true. */
export type LabelFacts = { readonly [none: string]: never };

export const decide = ({ data }: LabelCommand, { serial }: Label): Decision<LabelEvent, LabelRejection> =>
  serial === null
    ? accept({ type: 'LabelUsed', data })
    : reject({ code: 'label-already-used', number: data.number, serial });

export const evolve = (_label: Label, { data }: RecordedLabelEvent): Label => ({ serial: data.serial });

export const LABEL: StreamKind<LabelCommand, Label, LabelEvent, LabelRejection, LabelFacts> = {
  name: 'label',
  initial: unusedLabel,
  decide,
  evolve,
};
