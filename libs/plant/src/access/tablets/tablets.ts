import type { TabletRow } from '../access-rows';
import type { Doorkeeping } from '../doorkeeping';
import { plainCode, readableCode } from '../factors/readable-code';
import { hashSecret, newSecret } from '../secret';

/** A tablet as it is listed. `bound` false: its code has not been typed in yet. */
export type ListedTablet = Omit<TabletRow, 'hash' | 'stations'> & { readonly stations: readonly string[] };

/** The tablets that PINs count on. */
export type Tablets = {
  /** `code` is shown once, here, and typed into the tablet soon. */
  readonly offerTablet: (
    wish: { readonly name: string; readonly stations: readonly string[] },
    by: string,
  ) => Promise<{ readonly tablet: string; readonly code: string; readonly until: number }>;
  /** The secret the tablet keeps; undefined: there is no such code, or no longer. */
  readonly bindTablet: (code: string) => Promise<{ readonly secret: string } | undefined>;
  readonly tabletOf: (secret: string) => Promise<ListedTablet | undefined>;
  readonly tablets: () => Promise<readonly ListedTablet[]>;
  /** Every session on it ends at once. False: there is none. */
  readonly endTablet: (tablet: string, by: string) => Promise<boolean>;
};

/** Twelve letters of 4.8 bits for a quarter of an hour, at two guesses a second: nobody gets there. */
const CODE_LETTERS = 12;
const OFFERED_FOR_MS = 900_000;
const SEEN_EVERY_MS = 60_000;
const ID_LETTERS = 8;

export const tablets = (door: Doorkeeping): Tablets => {
  const { rows, now, notes, cache } = door;
  return {
    offerTablet: async ({ name, stations }, by) => {
      const tablet = `tablet-${hashSecret(newSecret('')).slice(0, ID_LETTERS)}`;
      const code = readableCode(CODE_LETTERS);
      const until = now() + OFFERED_FOR_MS;
      await notes.note(
        { type: 'TabletOffered', data: { account: tablet, name, stations: [...stations] } },
        by,
      );
      await rows.putTablet({
        ...{ tablet, name, stations: JSON.stringify(stations), hash: hashSecret(plainCode(code)) },
        ...{ bound: false, madeAt: now(), seenAt: now(), expiresAt: until },
      });
      return { tablet, code, until };
    },
    bindTablet: async (code) => {
      const row = await rows.tabletWith(hashSecret(plainCode(code)));
      if (row === undefined || row.bound || now() >= (row.expiresAt ?? 0)) return undefined;
      const secret = newSecret('');
      await notes.note({ type: 'TabletAccepted', data: { account: row.tablet } });
      await rows.putTablet({ ...row, hash: hashSecret(secret), bound: true, seenAt: now(), expiresAt: null });
      return { secret };
    },
    tabletOf: async (secret) => {
      const row = await rows.tabletWith(hashSecret(secret));
      if (row?.bound !== true) return undefined;
      if (now() - row.seenAt >= SEEN_EVERY_MS) await rows.tabletSeen(row.tablet, now());
      return listed(row);
    },
    tablets: async () =>
      (await rows.tablets()).filter((row) => row.bound || now() < (row.expiresAt ?? 0)).map(listed),
    endTablet: async (tablet, by) => {
      const row = (await rows.tablets()).find((one) => one.tablet === tablet);
      if (row === undefined) return false;
      await notes.note({ type: 'TabletEnded', data: { account: tablet } }, by);
      await rows.dropTablet(tablet);
      cache.clear();
      door.ended();
      return true;
    },
  };
};

/** Written by offerTablet, and read nowhere else. */
const listed = ({ hash: _hash, stations, ...row }: TabletRow): ListedTablet => ({
  ...row,
  stations: JSON.parse(stations) as readonly string[],
});
