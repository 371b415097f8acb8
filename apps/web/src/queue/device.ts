/** This device by a name of its own, its count of entries, and how its clock goes against the server's. */

const DEVICE_KEPT_AS = 'studbook.device';
const COUNT_KEPT_AS = 'studbook.count';
const SKEW_KEPT_AS = 'studbook.skew';

const newName = (): string =>
  `tablet-${Array.from(crypto.getRandomValues(new Uint8Array(4)), (byte) => byte.toString(16).padStart(2, '0')).join('')}`;

export const deviceName = (): string => {
  const kept = localStorage.getItem(DEVICE_KEPT_AS);
  if (kept !== null) return kept;
  const name = newName();
  localStorage.setItem(DEVICE_KEPT_AS, name);
  return name;
};

export const nextCount = (): number => {
  const count = Number(localStorage.getItem(COUNT_KEPT_AS) ?? '0') + 1;
  localStorage.setItem(COUNT_KEPT_AS, String(count));
  return count;
};

/** The server says the time to the second: on average it is half of one later than it says. */
const HALF_A_SECOND = 500;

/** Measured with each answer: our clock halfway between asking and hearing, less the server's. */
export const measureSkew = (dateHeader: string | null, askedMs: number, heardMs: number): void => {
  const theirs = Date.parse(dateHeader ?? '');
  // An answer that was long under way says little of the time.
  if (Number.isNaN(theirs) || heardMs - askedMs > 2 * HALF_A_SECOND) return;
  const skew = Math.round((askedMs + heardMs) / 2 - theirs - HALF_A_SECOND);
  localStorage.setItem(SKEW_KEPT_AS, String(skew));
};

/** Milliseconds this device is ahead of the server; undefined while it was never measured. */
export const clockSkew = (): number | undefined => {
  const kept = localStorage.getItem(SKEW_KEPT_AS);
  return kept === null ? undefined : Number(kept);
};
