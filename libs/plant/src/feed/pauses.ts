import type { Tried } from './post';

/** 5 s, 15 s, 45 s ... each three times the last, and never more than six hours. */
const FIRST_MS = 5_000;
const GROWTH = 3;
const LONGEST_MS = 6 * 60 * 60 * 1_000;

/** About a day and a half after the first try: a receiver that is mended over a weekend's night misses nothing. */
const GIVEN_UP_AFTER = 12;
/** Whoever read it and refused it will refuse it again; a few tries cover a mistake that is mended at once. */
const REFUSED_AFTER = 5;

/** How long what is next waits after this many failures in a row. */
export const pauseAfter = (failures: number, asked = 0): number =>
  Math.min(LONGEST_MS, Math.max(asked, FIRST_MS * GROWTH ** Math.max(0, failures - 1)));

export const isGivenUp = ({ how }: Tried & { readonly ok: false }, tries: number): boolean =>
  tries >= (how === 'refused' ? REFUSED_AFTER : GIVEN_UP_AFTER);
