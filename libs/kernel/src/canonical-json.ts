import type { JsonObject } from './json';

/** The RFC 8785 text of a JSON object: what is stored and hashed. Members that are undefined are absent. */
export declare const canonicalJson: (value: JsonObject) => string;
