/** The lot open at the station, of each kind. */
export type Station = {
  readonly mounted: { readonly [kind: string]: string };
  readonly held: { readonly hold: string; readonly reason: string; readonly since: string } | null;
};

export const emptyStation: Station = { mounted: {}, held: null };
