import type { PlannedValue } from './plan';

/** A place to look at, and how many spots there. */
export type PlaceToLookAt = { readonly place: string; readonly spots: number };

/**
 * Where the worst of n is looked for: n of the value's places, drawn by lot for each serial, so that nobody knows
 * beforehand where a count will be taken, and everybody who asks again gets the same answer. With fewer places
 * than n, some are looked at in more than one spot.
 */
export const placesToLookAt = (
  serial: string,
  operation: string,
  { characteristic, worstOf, places = [] }: Pick<PlannedValue, 'characteristic' | 'worstOf' | 'places'>,
): readonly PlaceToLookAt[] => {
  if (worstOf < 2 || places.length === 0) return [];
  const drawn = [...places]
    .map((place) => ({ place, lot: lotOf(`${serial} ${operation} ${characteristic} ${place}`) }))
    .sort((a, b) => a.lot - b.lot || (a.place < b.place ? -1 : 1))
    .slice(0, worstOf);
  const [each, over] = [Math.floor(worstOf / drawn.length), worstOf % drawn.length];
  return drawn.map(({ place }, index) => ({ place, spots: each + (index < over ? 1 : 0) }));
};

/** FNV-1a over the text's code units (Fowler, Noll and Vo), then stirred: near serials must not draw alike. */
const lotOf = (text: string): number => {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  }
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
};
