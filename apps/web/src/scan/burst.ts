/**
 * Tells a scanner's typing from a person's. A keyboard-wedge scanner sends its characters a few milliseconds
 * apart and ends with Enter; a quick typist needs 80 ms a key, and two rolled keys are not six.
 */
export type Burst = { readonly text: string; readonly lastMs: number };

/** Slow scanners are set to 20 or 30 ms between characters; a busy tablet adds some. */
export const LONGEST_GAP_MS = 50;
/** Shorter than any serial, lot or label number, longer than a rolled pair of keys. */
export const SHORTEST_SCAN = 4;

export const SILENCE: Burst = { text: '', lastMs: -Infinity };

export const continues = (burst: Burst, atMs: number): boolean => atMs - burst.lastMs <= LONGEST_GAP_MS;

export const typed = (burst: Burst, character: string, atMs: number): Burst => ({
  text: continues(burst, atMs) ? burst.text + character : character,
  lastMs: atMs,
});

/** The scanned text when Enter ends a burst; null when it was a person's Enter. */
export const scanned = (burst: Burst, atMs: number): string | null =>
  continues(burst, atMs) && burst.text.length >= SHORTEST_SCAN ? burst.text : null;
