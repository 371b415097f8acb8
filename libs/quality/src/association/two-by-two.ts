/**
 * Counts of units: [[exposed with the event, exposed without], [unexposed with the event, unexposed without]].
 * Exposed: made there, by them, from that lot. Event: claimed, found defective.
 */
export type TwoByTwo = readonly [readonly [number, number], readonly [number, number]];

/** A figure with its interval. */
export type Estimate = { readonly value: number; readonly low: number; readonly high: number };

export const totalOf = ([[a, b], [c, d]]: TwoByTwo): number => a + b + c + d;

/** Sample odds ratio ad/bc; infinite or not a number where a cell is empty. */
export const sampleOddsRatio = ([[a, b], [c, d]]: TwoByTwo): number => (a * d) / (b * c);
