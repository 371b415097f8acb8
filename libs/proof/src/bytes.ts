/** Bytes as text and back, the same in a browser and on a server. What cannot be read is undefined, never a guess. */
const ENCODER = new TextEncoder();
/** Strict, and a byte order mark is kept: what was hashed must not change by being read. */
const DECODER = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

export const utf8 = (text: string): Uint8Array => ENCODER.encode(text);

export const textOf = (bytes: Uint8Array): string | undefined => {
  try {
    return DECODER.decode(bytes);
  } catch {
    return undefined;
  }
};

const HEX = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'));

export const hexOf = (bytes: Uint8Array): string => {
  let text = '';
  for (const byte of bytes) text += HEX[byte] ?? '';
  return text;
};

export const bytesOfHex = (text: string): Uint8Array | undefined => {
  if (text.length % 2 !== 0 || !/^[0-9a-f]*$/.test(text)) return undefined;
  return Uint8Array.from({ length: text.length / 2 }, (_, n) =>
    Number.parseInt(text.slice(n * 2, n * 2 + 2), 16),
  );
};

const BASE64 = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
/** By character code; a path of hashes is decoded by the ten thousand. */
const SEXTETS = Int8Array.from({ length: 128 }, (_, code) => BASE64.indexOf(String.fromCharCode(code)));

export const base64Of = (bytes: Uint8Array): string => {
  let text = '';
  for (let at = 0; at < bytes.length; at += 3) {
    const [a = 0, b = 0, c = 0] = bytes.subarray(at, at + 3);
    const left = bytes.length - at;
    text += sextet(a >> 2) + sextet(((a & 3) << 4) | (b >> 4));
    text += left > 1 ? sextet(((b & 15) << 2) | (c >> 6)) : '=';
    text += left > 2 ? sextet(c & 63) : '=';
  }
  return text;
};

const sextet = (value: number): string => BASE64[value] ?? '';

/** Only the one form that `base64Of` writes: two texts for the same bytes would let a text change unnoticed. */
export const bytesOfBase64 = (text: string): Uint8Array | undefined => {
  const digits = text.endsWith('==') ? text.length - 2 : text.endsWith('=') ? text.length - 1 : text.length;
  if (text.length % 4 !== 0 || digits % 4 === 1) return undefined;

  const bytes = new Uint8Array((digits * 3) >> 2);
  let [held, bits, at] = [0, 0, 0];
  for (let n = 0; n < digits; n += 1) {
    const value = SEXTETS[text.charCodeAt(n)] ?? -1;
    if (value < 0) return undefined;
    held = ((held << 6) | value) & 0xfff;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[at] = held >> bits;
    at += 1;
  }
  return (held & ((1 << bits) - 1)) === 0 ? bytes : undefined;
};

export const joined = (...parts: readonly Uint8Array[]): Uint8Array => {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
};

export const sameBytes = (a: Uint8Array, b: Uint8Array): boolean => {
  if (a.length !== b.length) return false;
  for (let n = 0; n < a.length; n += 1) if (a[n] !== b[n]) return false;
  return true;
};

/** As both databases order text: byte by byte. JavaScript's own order differs beyond U+FFFF. */
export const byBytes = (a: string, b: string): number => {
  const [left, right] = [utf8(a), utf8(b)];
  const shared = Math.min(left.length, right.length);
  for (let n = 0; n < shared; n += 1) {
    const apart = (left[n] ?? 0) - (right[n] ?? 0);
    if (apart !== 0) return apart;
  }
  return left.length - right.length;
};
