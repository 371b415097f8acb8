/** The lot open at the station, of each kind. */
export type Station = { readonly mounted: { readonly [kind: string]: string } };

export const emptyStation: Station = { mounted: {} };
