/** What an event may hold: JSON, nothing else. */
export type Json = string | number | boolean | null | readonly Json[] | JsonObject;
/** An absent member and one that is `undefined` are the same: neither is stored. */
export type JsonObject = { readonly [name: string]: Json | undefined };
