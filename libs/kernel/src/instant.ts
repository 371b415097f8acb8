/** RFC 3339 with milliseconds optional and an offset: what `occurredAt` and `recordedAt` look like. */
export const INSTANT =
  /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])T(?:[01]\d|2[0-3]):[0-5]\d:[0-5]\d(?:\.\d{1,3})?(?:Z|[+-](?:0\d|1[0-4]):[0-5]\d)$/;

/** Milliseconds since 1970 UTC. The only place where an instant in an event becomes a number. */
export const epochMs = (instant: string): number => Date.parse(instant);

/** The calendar day on the floor, as the device's own offset has it: `2026-03-14`. */
export const floorDay = (instant: string): string => instant.slice(0, 10);

/** Milliseconds from one instant to another. */
export const elapsedMs = (from: string, to: string): number => epochMs(to) - epochMs(from);

const DAY_MS = 86_400_000;

/** Whole days from one calendar day to another, both as `2026-03-14`; below 0 when the other is past. */
export const daysBetween = (from: string, to: string): number =>
  (epochMs(`${to}T00:00:00Z`) - epochMs(`${from}T00:00:00Z`)) / DAY_MS;
