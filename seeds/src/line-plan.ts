import type { Chance } from './random';

/** The pace of the line, scaled down from a busy plant: four line moves a working day, a start every other move. */
const MOVES_A_DAY = 4;
/** The last sections start at every move, so that a visitor finds the line full. */
const FULL_LINE = 20;
/** So many starts before the last, one is taken off the line and is not back yet when the story ends. */
const STILL_AWAY = { before: 9, at: 5, moves: 99 };
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

/** No station has this place. */
const NEVER = -1;

type SlotStay = {
  station: number;
  from: number;
  to: number | null;
  pulledAt: number | null;
  back: number | null;
};
type Runner = { stays: SlotStay[]; wait: number; pullAt: number; staysAway: boolean };

const fresh = (chance: Chance, stations: number): Runner => ({
  stays: [],
  wait: 0,
  pullAt: chance.yes(PULLED) ? chance.between(Math.floor(stations / 3), stations - 3) : NEVER,
  staysAway: false,
});

/** The line as it stands at one move. */
class Line {
  readonly runners: Runner[] = [];
  slot = 0;
  private readonly standing = new Map<number, Runner>();
  private readonly away: Runner[] = [];
  private nextStart = 0;

  constructor(
    private readonly stations: number,
    private readonly chance: Chance,
  ) {}

  /** From its far end backwards, so that each section moves into a place just left. */
  move(): void {
    for (let station = this.stations - 1; station >= 0; station -= 1) this.moveFrom(station);
    this.bringBack();
  }

  start(left: number): void {
    if (this.slot < this.nextStart || this.standing.has(0)) return;

    const runner = fresh(this.chance, this.stations);
    if (left === STILL_AWAY.before) runner.pullAt = STILL_AWAY.at;
    runner.staysAway = left === STILL_AWAY.before;
    this.runners.push(runner);
    this.enter(runner, 0);
    this.nextStart = this.slot + (left <= FULL_LINE ? 1 : this.chance.between(1, 3));
  }

  private enter(runner: Runner, station: number): void {
    this.standing.set(station, runner);
    runner.wait = 1 + (this.chance.yes(LINGERS) ? 1 : 0);
    runner.stays.push({ station, from: this.slot, to: null, pulledAt: null, back: null });
  }

  private moveFrom(station: number): void {
    const runner = this.standing.get(station);
    if (runner === undefined) return;

    runner.wait -= 1;
    if (runner.pullAt === station) this.pull(runner, station);
    else if (runner.wait <= 0 && !this.standing.has(station + 1)) this.leave(runner, station);
  }

  private leave(runner: Runner, station: number): void {
    this.standing.delete(station);
    const stay = runner.stays.at(-1);
    if (stay !== undefined) stay.to = this.slot;
    if (station + 1 < this.stations) this.enter(runner, station + 1);
  }

  private pull(runner: Runner, station: number): void {
    this.standing.delete(station);
    const stay = runner.stays.at(-1);
    if (stay !== undefined) stay.pulledAt = this.slot;
    runner.pullAt = NEVER;
    runner.wait = runner.staysAway ? STILL_AWAY.moves : this.chance.between(3, 10);
    this.away.push(runner);
  }

  private bringBack(): void {
    for (const runner of [...this.away]) {
      runner.wait -= 1;
      const stay = runner.stays.at(-1);
      if (runner.wait > 0 || stay === undefined || this.standing.has(stay.station)) continue;

      this.away.splice(this.away.indexOf(runner), 1);
      stay.back = this.slot;
      this.standing.set(stay.station, runner);
      runner.wait = 1;
    }
  }
}

/** Where every section stands, slot by slot, until all have started. */
const run = (
  sections: number,
  stations: number,
  chance: Chance,
): { runners: readonly Runner[]; slots: number } => {
  const line = new Line(stations, chance);
  while (line.runners.length < sections) {
    line.move();
    line.start(sections - line.runners.length);
    line.slot += 1;
  }
  return { runners: line.runners, slots: line.slot };
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
    endMs: (at) => at(days - 1, MOVE_MINUTES[LAST_SLOT_OF_DAY] + 130),
  };
};
