/** Addresses of the screens, made and read in one place. */
export const places = {
  start: '/',
  signIn: '/sign-in',
  line: '/line',
  quality: '/quality',
  stationQuality: (id: string) => `/quality/${encodeURIComponent(id)}`,
  people: '/people',
  ownAccess: '/own-access',
  audit: '/audit',
  verify: '/verify',
  defects: '/defects',
  holds: '/holds',
  equipment: '/equipment',
  releases: '/release',
  releaseOf: (serial: string) => `/release/${encodeURIComponent(serial)}`,
  agency: '/agency',
  agencyReport: '/agency/report',
  containment: '/containment',
  site: '/site',
  feed: '/feed',
  claims: '/claims',
  claim: (id: string) => `/claims/${encodeURIComponent(id)}`,
  complaint: '/complaint',
  dueDays: '/due',
  determination: (id: string) => `/due/${encodeURIComponent(id)}`,
  sharing: (serial: string, operation: string, defect: string) =>
    `/containment?${new URLSearchParams({ serial, operation, defect }).toString()}`,
  tag: (serial: string, hold: string) => `/tag/${encodeURIComponent(serial)}/${encodeURIComponent(hold)}`,
  rulebook: '/rulebook',
  rulebookPart: (part: string) => `/rulebook/${part}`,
  paperLabel: (kind: 'serial' | 'lot', code: string) => `/labels/${kind}/${encodeURIComponent(code)}`,
  traveler: (serial: string) => `/traveler/${encodeURIComponent(serial)}`,
  /** The token stands behind the `#`: no server's log and no other site ever sees it. */
  link: (part: LinkPart, token: string) => `/link/${part}#${token}`,
  homes: '/home',
  home: (serial: string) => `/home/${encodeURIComponent(serial)}`,
  station: (id: string) => `/station/${encodeURIComponent(id)}`,
  sectionAt: (station: string, serial: string) =>
    `/station/${encodeURIComponent(station)}/${encodeURIComponent(serial)}`,
} as const;

export type LinkPart = 'build-book' | 'site-work';

export type Place =
  | {
      readonly screen:
        'start' | 'sign-in' | 'line' | 'quality' | 'people' | 'audit' | 'verify' | 'own-access';
    }
  | {
      readonly screen:
        'defects' | 'holds' | 'equipment' | 'agency' | 'agency-report' | 'containment' | 'site' | 'feed';
    }
  | { readonly screen: 'claims' | 'complaint' | 'due' }
  | { readonly screen: 'claim'; readonly claim: string }
  | { readonly screen: 'determination'; readonly determination: string }
  | { readonly screen: 'station-quality'; readonly station: string }
  | { readonly screen: 'release'; readonly serial: string | null }
  | { readonly screen: 'rulebook'; readonly part: string | null }
  | { readonly screen: 'traveler'; readonly serial: string }
  | { readonly screen: 'link'; readonly part: LinkPart }
  | { readonly screen: 'paper-label'; readonly kind: 'serial' | 'lot'; readonly code: string }
  | { readonly screen: 'tag'; readonly serial: string; readonly hold: string }
  | { readonly screen: 'home'; readonly serial: string | null }
  | { readonly screen: 'station'; readonly station: string; readonly serial: string | null }
  | { readonly screen: 'unknown' };

const single = {
  '': 'start',
  'sign-in': 'sign-in',
  line: 'line',
  quality: 'quality',
  people: 'people',
  'own-access': 'own-access',
  audit: 'audit',
  verify: 'verify',
  defects: 'defects',
  holds: 'holds',
  equipment: 'equipment',
  agency: 'agency',
  containment: 'containment',
  site: 'site',
  feed: 'feed',
  complaint: 'complaint',
} as const;
const isSingle = (name: string): name is keyof typeof single => Object.hasOwn(single, name);

type Read = (second: string | undefined, third: string | undefined) => Place | undefined;

/** Places with something in their address besides their name. */
const READ: { readonly [first: string]: Read } = {
  home: (serial, more) => (more ? undefined : { screen: 'home', serial: serial || null }),
  station: (station, serial) =>
    station ? { screen: 'station', station, serial: serial || null } : undefined,
  quality: (station) => (station ? { screen: 'station-quality', station } : undefined),
  rulebook: (part) => ({ screen: 'rulebook', part: part || null }),
  labels: (kind, code) =>
    code && (kind === 'serial' || kind === 'lot') ? { screen: 'paper-label', kind, code } : undefined,
  traveler: (serial) => (serial ? { screen: 'traveler', serial } : undefined),
  release: (serial) => ({ screen: 'release', serial: serial || null }),
  tag: (serial, hold) => (serial && hold ? { screen: 'tag', serial, hold } : undefined),
  link: (part) => (part === 'build-book' || part === 'site-work' ? { screen: 'link', part } : undefined),
  claims: (claim) => (claim ? { screen: 'claim', claim } : { screen: 'claims' }),
  due: (determination) => (determination ? { screen: 'determination', determination } : { screen: 'due' }),
  agency: (part) => (part === 'report' ? { screen: 'agency-report' } : undefined),
};

/** `%` alone is no encoding of anything: the piece is taken as it was typed. */
const decoded = (piece: string): string => {
  try {
    return decodeURIComponent(piece);
  } catch (fault) {
    if (fault instanceof URIError) return piece;
    throw fault;
  }
};

export const placeOf = (path: string): Place => {
  const [first = '', second, third, ...more] = path.replace(/\/$/, '').split('/').slice(1).map(decoded);
  if (more.length > 0) return { screen: 'unknown' };
  const read = Object.hasOwn(READ, first) ? READ[first]?.(second, third) : undefined;
  if (read !== undefined) return read;
  return isSingle(first) && second === undefined ? { screen: single[first] } : { screen: 'unknown' };
};
