/** One timer for whatever is due first. */
export type AlarmClock = { readonly at: (time: number) => void; readonly stop: () => void };

/** No sooner, so that what fails at once is not tried at once; no later, because a timer cannot be set for ever. */
const SOONEST_MS = 50;
const FURTHEST_MS = 60 * 60 * 1_000;

export const alarmClock = (clock: () => number, ring: () => void): AlarmClock => {
  let timer: NodeJS.Timeout | undefined;
  let due = Infinity;
  return {
    at: (time) => {
      if (time >= due) return;
      clearTimeout(timer);
      due = time;
      const ahead = Math.min(FURTHEST_MS, Math.max(SOONEST_MS, time - clock()));
      timer = setTimeout(() => {
        due = Infinity;
        ring();
      }, ahead).unref();
    },
    stop: () => {
      due = -Infinity;
      clearTimeout(timer);
    },
  };
};
