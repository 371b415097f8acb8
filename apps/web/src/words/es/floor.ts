import floor from './floor.json';
import problems from './problems.json';

/** What a tablet at a station needs; it loads no more. */
export const floorWords = { ...floor, ...problems };
