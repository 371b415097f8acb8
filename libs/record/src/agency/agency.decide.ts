import { accept, assertNever, reject } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type { AgencyCommand } from './agency.commands';
import type { AgencyEvent, ObservationAnswered, ObservationClosed } from './agency.events';
import { evolve } from './agency.evolve';
import { noVisits } from './agency.state';
import type { Agency } from './agency.state';

/** Listed in order of precedence. */
export type AgencyRejection =
  | { readonly code: 'station-unknown'; readonly station: string }
  | { readonly code: 'observation-unknown'; readonly observation: string }
  | { readonly code: 'observation-closed-already'; readonly observation: string }
  | { readonly code: 'observation-not-answered'; readonly observation: string }
  | { readonly code: 'not-allowed'; readonly actor: string; readonly needs: string };

export type AgencyFacts = {
  readonly actor: string;
  readonly roles: readonly string[];
  /** A rulebook that lists none takes any. */
  readonly stations: ReadonlySet<string>;
};

type AgencyDecision = Decision<AgencyEvent, AgencyRejection>;

export const decide = (command: AgencyCommand, agency: Agency, facts: AgencyFacts): AgencyDecision => {
  switch (command.type) {
    case 'MakeVisit':
      return (
        strangers(command.data.stations, facts) ?? theirs(facts, { type: 'VisitMade', data: command.data })
      );
    case 'MakeObservation':
      return theirs(facts, { type: 'ObservationMade', data: command.data });
    case 'AnswerObservation':
      return answer(command.data, agency);
    case 'CloseObservation':
      return close(command.data, agency, facts);
    default:
      return assertNever(command);
  }
};

const AGENCY = 'agency-inspector';

/** Only the agency's own people speak for it. */
const theirs = ({ actor, roles }: AgencyFacts, event: AgencyEvent): AgencyDecision =>
  roles.includes(AGENCY) ? accept(event) : reject({ code: 'not-allowed', actor, needs: AGENCY });

const strangers = (named: readonly string[], { stations }: AgencyFacts): AgencyDecision | null => {
  const station = named.find((each) => stations.size > 0 && !stations.has(each));
  return station === undefined ? null : reject({ code: 'station-unknown', station });
};

const answer = (data: ObservationAnswered['data'], agency: Agency): AgencyDecision => {
  const { observation } = data;
  const standing = standingOf(agency, observation);
  if (standing === undefined) return reject({ code: 'observation-unknown', observation });
  if (standing === 'closed') return reject({ code: 'observation-closed-already', observation });

  return accept({ type: 'ObservationAnswered', data });
};

const close = (data: ObservationClosed['data'], agency: Agency, facts: AgencyFacts): AgencyDecision => {
  const { observation } = data;
  const standing = standingOf(agency, observation);
  if (standing === undefined) return reject({ code: 'observation-unknown', observation });
  if (standing === 'closed') return reject({ code: 'observation-closed-already', observation });
  if (standing === 'open') return reject({ code: 'observation-not-answered', observation });

  return theirs(facts, { type: 'ObservationClosed', data });
};

const standingOf = (
  { observations }: Agency,
  id: string,
): Agency['observations'][number]['standing'] | undefined =>
  observations.find(({ observation }) => observation === id)?.standing;

export const AGENCY_STREAM: StreamKind<AgencyCommand, Agency, AgencyEvent, AgencyRejection, AgencyFacts> = {
  name: 'agency',
  initial: noVisits,
  decide,
  evolve,
};
