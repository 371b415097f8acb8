import type { Chance } from './random';

/** The pace of the line, scaled down from a busy plant: four line moves a working day, a start every other move. */
const MOVES_A_DAY = 4;
/** The last sections start at every move, so that a visitor finds the line full. */
const FULL_LINE = 20;
const LINGERS = 0.16;
const PULLED = 0.03;
/** A day's minutes by the wall clock at which the line moves. */
const MOVE_MINUTES = [360, 500, 650, 790] as const;
const DAY_ENDS = 930;

export type Stay = {
  readonly station: string;
  readonly fromMs: number;
  /** Null: it still stands there when the story ends. */
  readonly toMs: number | null;
  /** Taken off the line here, and when it came back. */
  readonly pulled: { readonly atMs: number; readonly backMs: number | null } | null;
};

type SlotStay = {
  station: number;
  from: number;
  to: number | null;
  pulledAt: number | null;
  back: number | null;
};
type Runner = { stays: SlotStay[]; wait: number; pullAt: number };

const fresh = (chance: Chance, stations: number): Runner => ({
  stays: [],
  wait: 0,
  pullAt: chance.yes(PULLED) ? chance.between(Math.floor(stations / 3), stations - 3) : -1,
});

/** Where every section stands, slot by slot, until all have started: the line moves from its far end backwards. */
const run = (sections: number, stations: number, chance: Chance): { runners: Runner[]; slots: number } => {
  const runners: Runner[] = [];
  const standing = new Map<number, Runner>();
  const away: Runner[] = [];
  let slot = 0;
  let nextStart = 0;

  const enter = (runner: Runner, station: number): void => {
    standing.set(station, runner);
    runner.wait = 1 + (chance.yes(LINGERS) ? 1 : 0);
    runner.stays.push({ station, from: slot, to: null, pulledAt: null, back: null });
  };
  const leave = (runner: Runner, station: number): void => {
    standing.delete(station);
    const stay = runner.stays.at(-1);
    if (stay !== undefined) stay.to = slot;
    if (station + 1 < stations) enter(runner, station + 1);
  };
  const pull = (runner: Runner, station: number): void => {
    standing.delete(station);
    const stay = runner.stays.at(-1);
    if (stay !== undefined) stay.pulledAt = slot;
    runner.pullAt = -1;
    runner.wait = chance.between(3, 10);
    away.push(runner);
  };
  const moveStation = (station: number): void => {
    const runner = standing.get(station);
    if (runner === undefined) return;
    runner.wait -= 1;
    if (runner.pullAt === station) pull(runner, station);
    else if (runner.wait <= 0 && !standing.has(station + 1)) leave(runner, station);
  };
  const bringBack = (): void => {
    for (const runner of [...away]) {
      runner.wait -= 1;
      const stay = runner.stays.at(-1);
      if (runner.wait > 0 || stay === undefined || standing.has(stay.station)) continue;
      away.splice(away.indexOf(runner), 1);
      stay.back = slot;
      standing.set(stay.station, runner);
      runner.wait = 1;
    }
  };
  const start = (): void => {
    if (slot < nextStart || standing.has(0)) return;
    const runner = fresh(chance, stations);
    runners.push(runner);
    enter(runner, 0);
    nextStart = slot + (sections - runners.length <= FULL_LINE ? 1 : chance.between(1, 3));
  };

  while (runners.length < sections) {
    for (let station = stations - 1; station >= 0; station -= 1) moveStation(station);
    bringBack();
    start();
    slot += 1;
  }
  return { runners, slots: slot };
};

/** Working days needed, and each section's stays once the days are known. */
export type LinePlan = {
  readonly days: number;
  readonly stays: (
    section: number,
    stations: readonly string[],
    at: (day: number, minute: number) => number,
  ) => readonly Stay[];
  /** The story stops in the middle of this slot. */
  readonly endMs: (at: (day: number, minute: number) => number) => number;
};

/** The last slot is a day's second: the story stops in the middle of a morning, with everyone at work. */
const LAST_SLOT_OF_DAY = 1;

export const planLine = (sections: number, stations: number, chance: Chance): LinePlan => {
  const { runners, slots } = run(sections, stations, chance);
  const shift = (MOVES_A_DAY - (slots % MOVES_A_DAY) + LAST_SLOT_OF_DAY + 1) % MOVES_A_DAY;
  const days = Math.ceil((slots + shift) / MOVES_A_DAY);

  return {
    days,
    stays: (section, names, at) => {
      const moment = (slot: number): number =>
        at(Math.floor((slot + shift) / MOVES_A_DAY), MOVE_MINUTES[(slot + shift) % MOVES_A_DAY] ?? DAY_ENDS);
      return (runners[section]?.stays ?? []).map((stay) => ({
        station: names[stay.station] ?? '',
        fromMs: moment(stay.from),
        toMs: stay.to === null ? null : moment(stay.to),
        pulled:
          stay.pulledAt === null
            ? null
            : { atMs: moment(stay.pulledAt), backMs: stay.back === null ? null : moment(stay.back) },
      }));
    },
    endMs: (at) => at(days - 1, (MOVE_MINUTES[LAST_SLOT_OF_DAY] ?? 0) + 130),
  };
};
