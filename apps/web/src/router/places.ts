/** Addresses of the screens, made and read in one place. */
export const places = {
  start: '/',
  signIn: '/sign-in',
  line: '/line',
  quality: '/quality',
  people: '/people',
  homes: '/home',
  home: (serial: string) => `/home/${encodeURIComponent(serial)}`,
  station: (id: string) => `/station/${encodeURIComponent(id)}`,
  sectionAt: (station: string, serial: string) =>
    `/station/${encodeURIComponent(station)}/${encodeURIComponent(serial)}`,
} as const;

export type Place =
  | { readonly screen: 'start' | 'sign-in' | 'line' | 'quality' | 'people' }
  | { readonly screen: 'home'; readonly serial: string | null }
  | { readonly screen: 'station'; readonly station: string; readonly serial: string | null }
  | { readonly screen: 'unknown' };

const single = {
  '': 'start',
  'sign-in': 'sign-in',
  line: 'line',
  quality: 'quality',
  people: 'people',
} as const;
const isSingle = (name: string): name is keyof typeof single => Object.hasOwn(single, name);

export const placeOf = (path: string): Place => {
  const [first = '', second, third] = path.split('/').slice(1).map(decodeURIComponent);
  if (first === 'home') return { screen: 'home', serial: second || null };
  if (first === 'station' && second) return { screen: 'station', station: second, serial: third || null };
  if (isSingle(first) && second === undefined) return { screen: single[first] };
  return { screen: 'unknown' };
};
