import type { Example } from './example';
import type { RouteName } from './routes';

const HOME = 'H26-1001';

/** Links for people without an account: made and ended by a manager, opened by whoever has the token. */
export const linkExamples = {
  links: { params: { serial: HOME } },
  linkIssue: {
    params: { serial: HOME },
    body: { purpose: 'installer', name: 'The crew that sets it', days: 60 },
  },
  linkEnd: { params: { serial: HOME, link: 'link-3f0a91c2d4e5' }, body: {} },
  linkBook: { body: {} },
  linkSite: { body: {} },
  linkWork: { body: { name: 'Sample Setter', operation: 'blocking-removed' } },
} satisfies { readonly [name in RouteName]?: Example };
