import { accept, assertNever, reject } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type {
  AgencyPositionTaken,
  ClassDetermined,
  CompletionReported,
  CountingRuleSet,
  DeterminationEvent,
  DeterminationOpened,
  GovernmentNotified,
  HomeRemedied,
  InitiallyDetermined,
  PlanApproved,
  PlanSubmitted,
} from './determination.events';
import { evolve } from './determination.evolve';
import { noDetermination } from './determination.state';
import type { Determination } from './determination.state';

export type DeterminationCommand =
  | { readonly type: 'OpenDetermination'; readonly data: DeterminationOpened['data'] }
  | { readonly type: 'DetermineInitially'; readonly data: InitiallyDetermined['data'] }
  | { readonly type: 'DetermineClass'; readonly data: ClassDetermined['data'] }
  | { readonly type: 'TakeAgencyPosition'; readonly data: AgencyPositionTaken['data'] }
  | { readonly type: 'SubmitPlan'; readonly data: PlanSubmitted['data'] }
  | { readonly type: 'ApprovePlan'; readonly data: PlanApproved['data'] }
  | { readonly type: 'RemedyHome'; readonly data: HomeRemedied['data'] }
  | { readonly type: 'ReportCompletion'; readonly data: CompletionReported['data'] }
  | { readonly type: 'NotifyGovernment'; readonly data: GovernmentNotified['data'] }
  | { readonly type: 'SetCountingRule'; readonly data: CountingRuleSet['data'] };

/** Listed in order of precedence. */
export type DeterminationRejection =
  | { readonly code: 'determination-unknown'; readonly determination: string }
  | { readonly code: 'determination-without-initial'; readonly determination: string }
  | { readonly code: 'plan-not-submitted'; readonly determination: string }
  | { readonly code: 'home-not-in-class'; readonly home: string };

export type DeterminationFacts = { readonly [none: string]: never };

type DeterminationDecision = Decision<DeterminationEvent, DeterminationRejection>;

export const decide = (command: DeterminationCommand, state: Determination): DeterminationDecision => {
  const { determination } = command.data;
  if (command.type === 'OpenDetermination') {
    return accept({ type: 'DeterminationOpened', data: command.data });
  }
  if (command.type === 'SetCountingRule') return accept({ type: 'CountingRuleSet', data: command.data });
  if (state.opened === null) return reject({ code: 'determination-unknown', determination });
  switch (command.type) {
    case 'DetermineInitially':
      return accept({ type: 'InitiallyDetermined', data: command.data });
    case 'TakeAgencyPosition':
      return accept({ type: 'AgencyPositionTaken', data: command.data });
    default:
      return state.initial.length === 0
        ? reject({ code: 'determination-without-initial', determination })
        : afterInitial(command, state);
  }
};

type AfterInitial = Exclude<
  DeterminationCommand,
  { readonly type: 'OpenDetermination' | 'DetermineInitially' | 'TakeAgencyPosition' | 'SetCountingRule' }
>;

const afterInitial = (command: AfterInitial, state: Determination): DeterminationDecision => {
  switch (command.type) {
    case 'DetermineClass':
      return accept({ type: 'ClassDetermined', data: command.data });
    case 'SubmitPlan':
      return accept({ type: 'PlanSubmitted', data: command.data });
    case 'ApprovePlan':
      return state.submitted === null
        ? reject({ code: 'plan-not-submitted', determination: command.data.determination })
        : accept({ type: 'PlanApproved', data: command.data });
    case 'RemedyHome':
      return homesOf(state).has(command.data.home)
        ? accept({ type: 'HomeRemedied', data: command.data })
        : reject({ code: 'home-not-in-class', home: command.data.home });
    case 'NotifyGovernment':
      return accept({ type: 'GovernmentNotified', data: command.data });
    case 'ReportCompletion':
      return accept({ type: 'CompletionReported', data: command.data });
    default:
      return assertNever(command);
  }
};

/** Those of the class; before there is one, those exposed. */
const homesOf = (state: Determination): ReadonlySet<string> =>
  new Set(state.class.at(-1)?.homes ?? state.opened?.exposure.map(({ home }) => home) ?? []);

export const DETERMINATION: StreamKind<
  DeterminationCommand,
  Determination,
  DeterminationEvent,
  DeterminationRejection,
  DeterminationFacts
> = { name: 'determination', initial: noDetermination, decide, evolve };
