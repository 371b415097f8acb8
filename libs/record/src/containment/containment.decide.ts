import { accept, assertNever, reject } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type { ContainmentCommand } from './containment.commands';
import type { ContainedInspected, ContainmentEvent, RecordedContainmentEvent } from './containment.events';
import { noContainment } from './containment.state';
import type { Containment } from './containment.state';

/** Listed in order of precedence. */
export type ContainmentRejection =
  | { readonly code: 'containment-empty'; readonly containment: string }
  | { readonly code: 'containment-unknown'; readonly containment: string }
  | { readonly code: 'section-not-contained'; readonly serial: string }
  | { readonly code: 'contained-clear-already'; readonly serial: string };

export type ContainmentFacts = { readonly [none: string]: never };

type ContainmentDecision = Decision<ContainmentEvent, ContainmentRejection>;

export const decide = (command: ContainmentCommand, state: Containment): ContainmentDecision => {
  switch (command.type) {
    case 'OpenContainment':
      return command.data.sections.length === 0
        ? reject({ code: 'containment-empty', containment: command.data.containment })
        : accept({ type: 'ContainmentOpened', data: command.data });
    case 'InspectContained':
      return inspect(command.data, state);
    default:
      return assertNever(command);
  }
};

/** What was found and mended may be looked at again; what is clear is done with. */
const inspect = (data: ContainedInspected['data'], { opened, looked }: Containment): ContainmentDecision => {
  const { containment, serial } = data;
  if (opened === null) return reject({ code: 'containment-unknown', containment });
  if (!opened.sections.some((section) => section.serial === serial)) {
    return reject({ code: 'section-not-contained', serial });
  }
  if (looked[serial]?.found === false) return reject({ code: 'contained-clear-already', serial });

  return accept({ type: 'ContainedInspected', data });
};

export const evolve = (state: Containment, event: RecordedContainmentEvent): Containment => {
  switch (event.type) {
    case 'ContainmentOpened': {
      const { note: _note, ...opened } = event.data;
      return { ...state, opened: { ...opened, at: event.occurredAt, actor: event.actor } };
    }
    case 'ContainedInspected': {
      const { serial, found, defect } = event.data;
      const look = { found, defect, by: event.actor, at: event.occurredAt };
      return { ...state, looked: { ...state.looked, [serial]: look } };
    }
    default:
      return assertNever(event);
  }
};

export const CONTAINMENT: StreamKind<
  ContainmentCommand,
  Containment,
  ContainmentEvent,
  ContainmentRejection,
  ContainmentFacts
> = { name: 'containment', initial: noContainment, decide, evolve };
