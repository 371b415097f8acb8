import { COUNTING, dueOn, rowOf } from './clocks';
import type { ClockName, CountingRule } from './clocks';
import type { Determination } from './determination.state';
import { addDays } from './floor-days';

export type DueClock = {
  readonly clock: ClockName;
  readonly section: string;
  readonly verified: boolean;
  readonly start: string;
  readonly due: string;
  readonly doneOn: string | null;
  readonly standing: 'done' | 'late-done' | 'running' | 'soon' | 'over';
};

/** Every clock that this file has started, with its due day and how it stands on `today`. */
export const clocksOf = (
  state: Determination,
  today: string,
  rule: CountingRule = COUNTING,
): readonly DueClock[] =>
  [...untilDetermined(state), ...afterDetermining(state), ...afterApproval(state, rule)].map((started) =>
    standingOf(started, today, rule),
  );

const untilDetermined = ({ opened, initial }: Determination): readonly Started[] =>
  opened === null
    ? []
    : [
        {
          clock: 'initial-determination',
          start: opened.receivedOn,
          doneOn: initial[0]?.decidedOn ?? null,
        },
      ];

const GRAVE: readonly string[] = ['serious-defect', 'imminent-safety-hazard'];

/** The first that was found a defect or worse starts them; a later determination does not move a running clock. */
const afterDetermining = (state: Determination): readonly Started[] => {
  const bad = state.initial.find(({ severity }) => severity === 'defect' || GRAVE.includes(severity));
  if (bad === undefined) return [];
  const start = bad.decidedOn;
  const planned = state.submitted?.submittedOn ?? null;
  const grave = state.initial.find(({ severity }) => GRAVE.includes(severity));
  const notified = state.notified?.notifiedOn ?? null;
  return [
    ...(grave === undefined
      ? []
      : [{ clock: 'notify-at-once', start: grave.decidedOn, doneOn: notified } as const]),
    { clock: 'class-determination', start, doneOn: state.class[0]?.decidedOn ?? null },
    { clock: 'plan', start, doneOn: planned },
  ];
};

const afterApproval = (state: Determination, rule: CountingRule): readonly Started[] => {
  const { approved, reported } = state;
  if (approved === null) return [];
  const start = approved.approvedOn;
  const most = dueOn('corrections', start, rule);
  const due = approved.correctBy === null || approved.correctBy > most ? most : approved.correctBy;
  return [
    { clock: 'corrections', start, doneOn: correctedOn(state), due },
    ...(approved.noticesBy === null
      ? []
      : [{ clock: 'notices', start, doneOn: notifiedOn(state), due: approved.noticesBy } as const]),
    { clock: 'report', start: due, doneOn: reported?.reportedOn ?? null },
  ];
};

type Started = {
  readonly clock: ClockName;
  readonly start: string;
  readonly doneOn: string | null;
  readonly due?: string;
};

const standingOf = (started: Started, today: string, rule: CountingRule): DueClock => {
  const { clock, start, doneOn } = started;
  const { section, verified } = rowOf(clock);
  const due = started.due ?? dueOn(clock, start, rule);
  return { clock, section, verified, start, due, doneOn, standing: standingOn(due, doneOn, today, rule) };
};

/** How a due day stands on `today`. */
export const standingOn = (
  due: string,
  doneOn: string | null,
  today: string,
  { warnDays }: CountingRule,
): DueClock['standing'] => {
  if (doneOn !== null) return doneOn <= due ? 'done' : 'late-done';
  if (today > due) return 'over';
  return addDays(today, warnDays) >= due ? 'soon' : 'running';
};

/** The day the last home of the class was remedied this way; null while one is left. */
const allDone = (state: Determination, hows: readonly string[]): string | null => {
  const homes = state.class.at(-1)?.homes ?? [];
  const days = homes.map(
    (home) => state.remedies.find((one) => one.home === home && hows.includes(one.how))?.doneOn ?? null,
  );
  const done = days.filter((day) => day !== null);
  return homes.length > 0 && done.length === homes.length ? (done.toSorted().at(-1) ?? null) : null;
};
const correctedOn = (state: Determination): string | null => allDone(state, ['corrected', 'refused']);
const notifiedOn = (state: Determination): string | null =>
  allDone(state, ['notified', 'corrected', 'refused']);
