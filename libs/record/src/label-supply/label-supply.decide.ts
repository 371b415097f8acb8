import { accept, reject } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type { LabelSupplyCommand } from './label-supply.commands';
import type { LabelSupplyEvent, RecordedLabelSupplyEvent } from './label-supply.events';
import { isIn, labelNumber, noLabels } from './label-supply.state';
import type { LabelSupply } from './label-supply.state';

/** Listed in order of precedence. */
export type LabelSupplyRejection =
  | { readonly code: 'label-run-unfit'; readonly first: string; readonly last: string }
  | { readonly code: 'labels-already-received'; readonly first: string; readonly last: string };

export type LabelSupplyFacts = { readonly [none: string]: never };

/** More than a year's worth at once is a slip of the finger. */
const LABELS_AT_ONCE = 5_000;

export const decide = (
  { data }: LabelSupplyCommand,
  { runs }: LabelSupply,
): Decision<LabelSupplyEvent, LabelSupplyRejection> => {
  const { first, last } = data;
  const from = labelNumber(first);
  const to = labelNumber(last);
  const count = from === undefined || to === undefined ? 0 : to.digits - from.digits + 1;
  if (from?.letters !== to?.letters || count < 1 || count > LABELS_AT_ONCE) {
    return reject({ code: 'label-run-unfit', first, last });
  }
  const overlaps = runs.find((run) => isIn(run, first) || isIn(run, last) || isIn(data, run.first));
  if (overlaps !== undefined) {
    return reject({ code: 'labels-already-received', first: overlaps.first, last: overlaps.last });
  }
  return accept({ type: 'LabelsReceived', data: { first, last, count } });
};

export const evolve = (
  { runs }: LabelSupply,
  { data, occurredAt }: RecordedLabelSupplyEvent,
): LabelSupply => ({
  runs: [...runs, { first: data.first, last: data.last, at: occurredAt }],
});

export const LABEL_SUPPLY: StreamKind<
  LabelSupplyCommand,
  LabelSupply,
  LabelSupplyEvent,
  LabelSupplyRejection,
  LabelSupplyFacts
> = { name: 'label-supply', initial: noLabels, decide, evolve };
