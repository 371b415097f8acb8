/** A UUIDv7: its first 48 bits are the time, so that the ledger's index of keys stays warm. */
export const newKey = (nowMs: number = Date.now()): string => {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  for (let index = 0; index < 6; index += 1) bytes[index] = Math.floor(nowMs / 256 ** (5 - index)) % 256;
  bytes[6] = 0x70 | ((bytes[6] ?? 0) & 0x0f);
  bytes[8] = 0x80 | ((bytes[8] ?? 0) & 0x3f);
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
};

const two = (number: number): string => String(Math.trunc(number)).padStart(2, '0');

/** Now, as this device's wall clock has it, with its offset: 2026-03-14T09:26:53.000-05:00. */
export const hereAndNow = (now: Date = new Date()): string => {
  const east = -now.getTimezoneOffset();
  const local = new Date(now.getTime() + east * 60_000).toISOString().slice(0, -1);
  return `${local}${east < 0 ? '-' : '+'}${two(Math.abs(east) / 60)}:${two(Math.abs(east) % 60)}`;
};
