/** What composition/ hands to the controllers, by name. */
export const PLANT = Symbol('plant');
export const DOOR = Symbol('door');
export const SETTING = Symbol('setting');
export const FAULTS = Symbol('faults');
export const LOG = Symbol('log');
export const STREAMS = Symbol('streams');
export const ACCESS_LOG = Symbol('access log');
export const FEED = Symbol('feed');
export const SETUP = Symbol('setup');
export const METRICS = Symbol('metrics');
export const PROVIDER = Symbol('identity provider');

/** What a controller may know of how this server was set up. */
export type Setting = {
  readonly engine: 'sqlite' | 'postgres';
  readonly ledger: string;
  readonly version: string;
  /** Behind a proxy that speaks TLS: cookies go back only that way. */
  readonly secureCookies: boolean;
  /** Whether a PIN counts on any device: in a demonstration, or where the plant says so. */
  readonly pinsAnywhere: boolean;
  /** The address people open; null: whatever they ask for. */
  readonly origin: string | null;
};
