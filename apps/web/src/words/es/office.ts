import audit from './audit.json';
import charts from './charts.json';
import claims from './claims.json';
import equipment from './equipment.json';
import feed from './feed.json';
import history from './history.json';
import line from './line.json';
import links from './links.json';
import officeProblems from './office-problems.json';
import ownAccess from './own-access.json';
import paperLabel from './paper-label.json';
import people from './people.json';
import quality from './quality.json';
import release from './release.json';
import rulebook from './rulebook.json';
import verify from './verify.json';

/** What the other screens say besides, a file an area. */
export const officeWords = {
  ...audit,
  ...charts,
  ...claims,
  ...equipment,
  ...feed,
  ...history,
  ...line,
  ...links,
  ...officeProblems,
  ...ownAccess,
  ...paperLabel,
  ...people,
  ...quality,
  ...release,
  ...rulebook,
  ...verify,
};
