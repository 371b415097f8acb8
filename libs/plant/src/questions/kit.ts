import type { AnswerOf } from '@libs/contracts';
import type { CompiledPlan, WorkState } from '@libs/judge';
import { floorDay } from '@libs/kernel';
import { INSTRUMENT, LOT, STATION } from '@libs/record';
import { asUsed, asWorked } from '../facts';
import type { Asked } from './asked';
import { lineQuestion } from './line';
import { sectionQuestion } from './section';
import { subjectOf } from './subject';

type Kit = AnswerOf<'kit'>;
type Standing = Kit['line']['sections'][number];
type Station = CompiledPlan['stations'][number];

/** A crew walks to the station before and to the one after; further away is another tablet's work. */
const STATIONS_AWAY = 2;
/** A plant has fewer on its whole line; a log read in from elsewhere may leave many more standing about. */
const MOST = 40;

/** All a tablet at this station may need until the network is back. */
export const kitQuestion = (asked: Asked) => {
  const line = lineQuestion(asked);
  return async (station: string): Promise<Kit | undefined> => {
    const stations = asked.plans.current()?.rulebook.stations ?? [];
    const here = stations.find(({ id }) => id === station);
    if (here === undefined) return undefined;

    const standing = await line([]);
    const near = standing.sections.filter((one) => isNear(one, here, stations)).slice(0, MOST);
    const packed = await sectionsOf(asked, near, station);
    return {
      station,
      position: standing.position,
      line: standing,
      ...packed,
      mounted: await mountedAt(asked, stations),
      instruments: await instrumentsOf(asked),
    };
  };
};

/** A shop works for every section on the line. */
const isNear = (one: Standing, here: Place, stations: readonly Place[]): boolean => {
  const pos = stations.find(({ id }) => id === one.station)?.pos ?? null;
  if (here.pos === null) return one.stage === 'on-line';
  return pos !== null && Math.abs(pos - here.pos) <= STATIONS_AWAY;
};
type Place = Pick<Station, 'id' | 'pos'>;

const sectionsOf = async (
  asked: Asked,
  near: readonly Standing[],
  station: string,
): Promise<Pick<Kit, 'sections' | 'plans' | 'people'>> => {
  const ask = sectionQuestion(asked);
  const sections: Kit['sections'] = [];
  const plans: { [digest: string]: CompiledPlan } = {};
  const people: { [actor: string]: string } = {};
  for (const { serial } of near) {
    const subject = await subjectOf(serial, asked);
    const section = await ask(serial, station);
    if (subject === undefined || section === undefined) continue;
    const { plan, state } = subject;
    if (plan !== null) plans[plan.digest] = plan;
    for (const { actor } of Object.values(state.work)) people[actor] = asked.names.person(actor);
    sections.push({
      section: { ...section, operations: [], carried: [] },
      state: stateOf(state),
      plan: plan?.digest ?? null,
    });
  }
  return { sections, plans, people };
};

/** Of a section's state only what the judge reads: the rest is nobody's business on a tablet. */
const stateOf = ({ work, defects, holds }: WorkState): Kit['sections'][number]['state'] => ({
  work,
  defects,
  holds,
});

const todayAt = ({ clock }: Asked): string => floorDay(new Date(clock()).toISOString());

const mountedAt = async (asked: Asked, stations: readonly Place[]): Promise<Kit['mounted']> => {
  const day = todayAt(asked);
  const mounted: Kit['mounted'] = {};
  for (const { id } of stations) {
    const lots = Object.values((await asked.ledger.state(STATION, id)).mounted);
    const worked = await Promise.all(
      lots.map(async (lot) => asWorked(await asked.ledger.state(LOT, lot), lot, day)),
    );
    const known = worked.filter((lot) => lot !== null);
    if (known.length > 0) mounted[id] = known;
  }
  return mounted;
};

const instrumentsOf = async (asked: Asked): Promise<Kit['instruments']> => {
  const day = todayAt(asked);
  const streams = await asked.streamsOf(INSTRUMENT.name);
  const ids = streams.map((stream) => stream.slice(INSTRUMENT.name.length + 1));
  const used = await Promise.all(
    ids.map(async (id) => asUsed(await asked.ledger.state(INSTRUMENT, id), id, day)),
  );
  return used.filter((instrument) => instrument !== null);
};
