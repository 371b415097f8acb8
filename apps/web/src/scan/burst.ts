/**
 * Tells a scanner's typing from a person's. A keyboard-wedge scanner sends its characters a few milliseconds
 * apart and ends with Enter; a quick typist needs 80 ms a key, and two rolled keys are not six.
 */
export type Burst = { readonly text: string; readonly lastMs: number };

/** Slow scanners are set to 20 or 30 ms between characters; a busy tablet doubles that. */
export const LONGEST_GAP_MS = 75;
/** Where no field has the focus, nobody types for any other reason: a slow scanner is heard, and a person too. */
export const LONGEST_GAP_ELSEWHERE_MS = 500;
/** A tablet that wakes up for a scan is late with its second character. */
export const LONGEST_FIRST_GAP_MS = 300;
/** Shorter than any serial, lot or label number, longer than a rolled pair of keys. */
export const SHORTEST_SCAN = 4;

export const SILENCE: Burst = { text: '', lastMs: -Infinity };

/** When a key came, and whether a text field took it. */
export type Stroke = { readonly atMs: number; readonly inField: boolean };

const longestGap = ({ text }: Burst, inField: boolean): number => {
  if (!inField) return LONGEST_GAP_ELSEWHERE_MS;
  return text.length === 1 ? LONGEST_FIRST_GAP_MS : LONGEST_GAP_MS;
};

export const continues = (burst: Burst, { atMs, inField }: Stroke): boolean =>
  atMs - burst.lastMs <= longestGap(burst, inField);

export const typed = (burst: Burst, character: string, stroke: Stroke): Burst => ({
  text: continues(burst, stroke) ? burst.text + character : character,
  lastMs: stroke.atMs,
});

/** The scanned text when Enter ends a burst; null when it was a person's Enter. */
export const scanned = (burst: Burst, stroke: Stroke): string | null =>
  continues(burst, stroke) && burst.text.length >= SHORTEST_SCAN ? burst.text : null;
