import history from './history.json';
import line from './line.json';
import people from './people.json';
import quality from './quality.json';

/** What the other screens say besides, a file an area. */
export const officeWords = { ...history, ...line, ...people, ...quality };
