import type { AnswerOf } from '@libs/contracts';
import { runsOutSoon } from '@libs/judge';
import { floorDay } from '@libs/kernel';
import { INSTRUMENT, LOT, PERSON, STATION } from '@libs/record';
import type { Asked } from './asked';

type Answer = AnswerOf<'equipment'>;
type Standing = Answer['lots'][number]['standing'];

/** What runs out, and what may not be used: lots, instruments, and what people are qualified to sign for. */
export const equipmentQuestion = (asked: Asked) => async (): Promise<Answer> => {
  const today = floorDay(new Date(asked.clock()).toISOString());
  return {
    today,
    lots: await lotsIn(asked, today),
    instruments: await instrumentsIn(asked, today),
    qualifications: await qualificationsIn(asked, today),
  };
};

const idsIn = async ({ streamsOf }: Asked, kind: string): Promise<readonly string[]> =>
  (await streamsOf(kind)).map((stream) => stream.slice(kind.length + 1));

/** `soon`: within a fortnight. `over`: past its day. `bad`: whatever the day. */
const standingOn = (today: string, lastDay: string | null, bad: boolean): Standing => {
  if (bad) return 'bad';
  if (lastDay === null) return 'good';
  if (lastDay < today) return 'over';
  return runsOutSoon(today, lastDay) ? 'soon' : 'good';
};

const lotsIn = async (asked: Asked, today: string): Promise<Answer['lots']> => {
  const mounted = await mountingsIn(asked);
  const lots: Answer['lots'] = [];
  for (const lot of await idsIn(asked, LOT.name)) {
    const { kind, usableUntil, quarantined } = await asked.ledger.state(LOT, lot);
    if (kind === null) continue;
    lots.push({
      lot,
      kind,
      kindName: asked.names.current().lotKind(kind),
      maker: null,
      usableUntil,
      mountedAt: mounted.get(lot) ?? [],
      standing: standingOn(today, usableUntil, quarantined),
    });
  }
  return lots;
};

type Mounted = Answer['lots'][number]['mountedAt'];

const mountingsIn = async (asked: Asked): Promise<ReadonlyMap<string, Mounted>> => {
  const mounted = new Map<string, Mounted>();
  for (const station of asked.plans.current()?.rulebook.stations ?? []) {
    const state = await asked.ledger.state(STATION, station.id);
    for (const lot of Object.values(state.mounted)) {
      mounted.set(lot, [...(mounted.get(lot) ?? []), { station: station.id, name: station.name }]);
    }
  }
  return mounted;
};

const instrumentsIn = async (asked: Asked, today: string): Promise<Answer['instruments']> => {
  const instruments: Answer['instruments'] = [];
  for (const instrument of await idsIn(asked, INSTRUMENT.name)) {
    const { kind, dueOn, inTolerance } = await asked.ledger.state(INSTRUMENT, instrument);
    if (kind === null) continue;
    instruments.push({
      instrument,
      kind,
      kindName: asked.names.current().instrumentKind(kind),
      dueOn,
      standing: standingOn(today, dueOn, !inTolerance),
    });
  }
  return instruments;
};

const qualificationsIn = async (asked: Asked, today: string): Promise<Answer['qualifications']> => {
  const found: Answer['qualifications'] = [];
  for (const person of await idsIn(asked, PERSON.name)) {
    const { enrolled, qualifications } = await asked.ledger.state(PERSON, person);
    if (!enrolled) continue;
    for (const { token, until } of qualifications) {
      found.push({
        person,
        name: asked.names.person(person),
        token,
        says: tokenSays(token, asked),
        until,
        standing: standingOn(today, until, false),
      });
    }
  }
  return found;
};

const tokenSays = (token: string, { names }: Asked): { readonly en: string; readonly es: string } => {
  const [sort = '', id = ''] = token.split(':');
  return sort === 'crew' ? { ...names.current().crew(id) } : { en: id, es: id };
};
