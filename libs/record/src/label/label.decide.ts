import { accept, assertNever, reject } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type { LabelCommand, TakeOffLabel, UseLabel } from './label.commands';
import type { LabelEvent, RecordedLabelEvent } from './label.events';
import { unusedLabel } from './label.state';
import type { Label } from './label.state';

/** Listed in order of precedence. */
export type LabelRejection =
  | { readonly code: 'label-already-used'; readonly number: string; readonly serial: string }
  | { readonly code: 'label-gone'; readonly number: string; readonly became: string }
  | { readonly code: 'label-not-received'; readonly number: string }
  | { readonly code: 'not-allowed'; readonly actor: string; readonly needs: string };

export type LabelFacts = {
  readonly actor: string;
  readonly roles: readonly string[];
  /** Among the labels received; always so in a plant that keeps no log of its supply. */
  readonly isReceived: boolean;
  /** The label the section wears, read after the section has decided. */
  readonly wornBy: {
    readonly serial: string;
    readonly number: string | null;
    readonly replaces: string | null;
  };
};

type LabelDecision = Decision<LabelEvent, LabelRejection>;

export const decide = (command: LabelCommand, label: Label, facts: LabelFacts): LabelDecision => {
  switch (command.type) {
    case 'UseLabel':
      return useLabel(command, label, facts);
    case 'TakeOffLabel':
      return takeOff(command, facts);
    case 'VoidLabel':
      return (
        unspent(command.data.number, label, facts) ?? accept({ type: 'LabelVoided', data: command.data })
      );
    case 'ReclaimLabel':
      return (
        unspent(command.data.number, label, facts) ??
        agencyOnly(facts) ??
        accept({ type: 'LabelReclaimed', data: command.data })
      );
    default:
      return assertNever(command);
  }
};

/** A number is used once, whatever else is true. What the section refused leaves it unused. */
const useLabel = ({ data }: UseLabel, label: Label, facts: LabelFacts): LabelDecision => {
  if (facts.wornBy.number !== data.number) return accept();
  const { replaces } = facts.wornBy;
  return (
    unspent(data.number, label, facts) ??
    accept({ type: 'LabelUsed', data: { ...data, ...(replaces === null ? {} : { replaces }) } })
  );
};

const takeOff = ({ data }: TakeOffLabel, { wornBy }: LabelFacts): LabelDecision =>
  wornBy.number === data.replacedBy ? accept({ type: 'LabelTakenOff', data }) : accept();

/** Null: it lies in the drawer, and may go on, be spoilt or be taken back. */
const unspent = (number: string, label: Label, { isReceived }: LabelFacts): LabelDecision | null => {
  if (label.serial !== null) return reject({ code: 'label-already-used', number, serial: label.serial });
  if (label.became !== 'unused') return reject({ code: 'label-gone', number, became: label.became });

  return isReceived ? null : reject({ code: 'label-not-received', number });
};

const AGENCY = 'agency-inspector';

const agencyOnly = ({ actor, roles }: LabelFacts): LabelDecision | null =>
  roles.includes(AGENCY) ? null : reject({ code: 'not-allowed', actor, needs: AGENCY });

export const evolve = (label: Label, event: RecordedLabelEvent): Label => {
  switch (event.type) {
    case 'LabelUsed':
      return { ...label, serial: event.data.serial, became: 'used' };
    case 'LabelVoided':
      return { ...label, became: 'void' };
    case 'LabelReclaimed':
      return { ...label, became: 'reclaimed' };
    case 'LabelTakenOff':
      return { ...label, became: 'replaced', replacedBy: event.data.replacedBy };
    default:
      return assertNever(event);
  }
};

export const LABEL: StreamKind<LabelCommand, Label, LabelEvent, LabelRejection, LabelFacts> = {
  name: 'label',
  initial: unusedLabel,
  decide,
  evolve,
};
