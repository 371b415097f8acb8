import { Done, NoBody } from '../access';
import * as links from '../link-shapes';
import { PHOTO_MEDIA, PhotoAnswer } from '../photo';
import { WorkAnswer } from '../shapes';
import { get, tell } from './route';
import type { Getting } from './route';

const managers = { access: ['quality-manager', 'administrator'] } as const;
/** Whoever has the link's token, as a bearer token; it opens one home and nothing else. */
const holder = { access: 'anyone', keyed: false, status: 200 } as const;

const linkPhoto: Getting<typeof PhotoAnswer> = {
  method: 'POST',
  path: '/api/link/photos',
  summary: 'Keep a photo of the site work of the home a link opens',
  access: 'anyone',
  takes: PHOTO_MEDIA,
  answer: PhotoAnswer,
  status: 201,
  keyed: false,
};

/** Links for people without an account. Opening one is written down, and so it is told. */
export const linkRoutes = {
  links: get('/api/homes/{serial}/links', 'Links out for a home', links.LinksAnswer, managers),
  linkIssue: tell(
    '/api/homes/{serial}/links',
    'Make a link for an installer or an owner; it is shown once',
    { body: links.LinkRequest, answer: links.LinkAnswer },
    { ...managers, keyed: false },
  ),
  linkEnd: tell(
    '/api/homes/{serial}/links/{link}/end',
    'End a link',
    { body: NoBody, answer: Done },
    { ...managers, keyed: false, status: 200 },
  ),
  linkBook: tell(
    '/api/link/build-book',
    'How the home was built that an owner’s link opens',
    { body: NoBody, answer: links.BuildBookAnswer },
    holder,
  ),
  linkSite: tell(
    '/api/link/site-work',
    'The site work of the home that an installer’s link opens',
    { body: NoBody, answer: links.SiteLinkAnswer },
    holder,
  ),
  linkWork: tell(
    '/api/link/work',
    'Tell site work of that home as done, signed by the name given',
    { body: links.LinkWorkRequest, answer: WorkAnswer },
    { access: 'anyone' },
  ),
  linkPhoto,
} as const;
