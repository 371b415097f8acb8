/** Addresses of the screens, made and read in one place. */
export const places = {
  start: '/',
  signIn: '/sign-in',
  line: '/line',
  quality: '/quality',
  people: '/people',
  audit: '/audit',
  defects: '/defects',
  holds: '/holds',
  releases: '/release',
  releaseOf: (serial: string) => `/release/${encodeURIComponent(serial)}`,
  agency: '/agency',
  agencyReport: '/agency/report',
  containment: '/containment',
  sharing: (serial: string, operation: string, defect: string) =>
    `/containment?${new URLSearchParams({ serial, operation, defect }).toString()}`,
  tag: (serial: string, hold: string) => `/tag/${encodeURIComponent(serial)}/${encodeURIComponent(hold)}`,
  homes: '/home',
  home: (serial: string) => `/home/${encodeURIComponent(serial)}`,
  station: (id: string) => `/station/${encodeURIComponent(id)}`,
  sectionAt: (station: string, serial: string) =>
    `/station/${encodeURIComponent(station)}/${encodeURIComponent(serial)}`,
} as const;

export type Place =
  | { readonly screen: 'start' | 'sign-in' | 'line' | 'quality' | 'people' | 'audit' }
  | { readonly screen: 'defects' | 'holds' | 'agency' | 'agency-report' | 'containment' }
  | { readonly screen: 'release'; readonly serial: string | null }
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
  audit: 'audit',
  defects: 'defects',
  holds: 'holds',
  agency: 'agency',
  containment: 'containment',
} as const;
const isSingle = (name: string): name is keyof typeof single => Object.hasOwn(single, name);

export const placeOf = (path: string): Place => {
  const [first = '', second, third] = path.split('/').slice(1).map(decodeURIComponent);
  if (first === 'home') return { screen: 'home', serial: second || null };
  if (first === 'station' && second) return { screen: 'station', station: second, serial: third || null };
  if (first === 'release') return { screen: 'release', serial: second || null };
  if (first === 'tag' && second && third) return { screen: 'tag', serial: second, hold: third };
  if (first === 'agency' && second === 'report') return { screen: 'agency-report' };
  if (isSingle(first) && second === undefined) return { screen: single[first] };
  return { screen: 'unknown' };
};
