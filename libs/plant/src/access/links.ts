import type { FactorRow, LinkPurpose } from './access-rows';
import type { Doorkeeping } from './doorkeeping';
import { hashSecret, newSecret, secretId } from './secret';

/** Times in milliseconds since 1970 UTC; `openedAt` null: never yet. */
export type Link = {
  readonly link: string;
  readonly purpose: LinkPurpose;
  readonly name: string;
  readonly madeAt: number;
  readonly until: number;
  readonly openedAt: number | null;
};
export type OpenedLink = {
  readonly link: string;
  readonly home: string;
  readonly purpose: LinkPurpose;
  readonly until: number;
};

/** Links that let people without an account see one home. */
export type Links = {
  /** The token is shown once, here; afterwards only its hash is known. */
  readonly issueLink: (
    wish: {
      readonly home: string;
      readonly purpose: LinkPurpose;
      readonly name: string;
      readonly days: number;
    },
    by: string,
  ) => Promise<{ readonly link: string; readonly token: string; readonly until: number }>;
  readonly linksOf: (home: string) => Promise<readonly Link[]>;
  /** False: that home has no such link. */
  readonly endLink: (home: string, link: string, by: string) => Promise<boolean>;
  /** Undefined alike for one that was never made, has ended, is over, or is for something else. */
  readonly openLink: (token: string, purposes: readonly LinkPurpose[]) => Promise<OpenedLink | undefined>;
};

const DAY_MS = 86_400_000;
/** Reading a page again is not news; coming back to it is. */
const OPENED_AGAIN_MS = 3_600_000;
const PREFIX = 'link-';

export const links = (door: Doorkeeping): Links => {
  const { rows, now, notes } = door;
  return {
    issueLink: async ({ home, purpose, name, days }, by) => {
      const token = newSecret('sbl_');
      const hash = hashSecret(token);
      const link = `${PREFIX}${secretId(hash)}`;
      const until = now() + days * DAY_MS;
      await notes.note(
        { type: 'LinkIssued', data: { account: link, home, purpose, until: isoOf(until) } },
        by,
      );
      await rows.putFactor({
        ...{ id: link, person: opens(home), kind: `${PREFIX}${purpose}`, name, data: hash },
        ...{ madeAt: now(), used: 0, expiresAt: until },
      });
      return { link, token, until };
    },
    linksOf: async (home) =>
      (await rows.factors(opens(home))).flatMap((row) => (isOver(row, now()) ? [] : listed(row))),
    endLink: async (home, link, by) => {
      const row = await rows.factor(link);
      if (row?.person !== opens(home) || listed(row).length === 0) return false;
      await notes.note({ type: 'LinkEnded', data: { account: link, home } }, by);
      await rows.dropFactor(link);
      return true;
    },
    openLink: async (token, purposes) => {
      const hash = hashSecret(token);
      for (const purpose of purposes) {
        const [row] = await rows.factorsWith(`${PREFIX}${purpose}`, hash);
        if (row !== undefined && !isOver(row, now())) return opened(door, row, purpose);
      }
      return undefined;
    },
  };
};

const opened = async (
  { rows, now, notes }: Doorkeeping,
  { id, person, used, expiresAt }: FactorRow,
  purpose: LinkPurpose,
): Promise<OpenedLink> => {
  const home = person.slice(OPENS.length);
  const at = now();
  if (at - used >= OPENED_AGAIN_MS) {
    await notes.note({ type: 'LinkOpened', data: { account: id, home, purpose } }, id);
    await rows.useFactor(id, at);
  }
  return { link: id, home, purpose, until: expiresAt ?? at };
};

/** A person's id has no slash in it, so that no home is ever taken for one. */
const OPENS = 'home/';
const opens = (home: string): string => `${OPENS}${home}`;

const PURPOSES: readonly LinkPurpose[] = ['installer', 'owner', 'owner-with-defects'];

const listed = ({ id, kind, name, madeAt, expiresAt, used }: FactorRow): readonly Link[] =>
  PURPOSES.filter((purpose) => kind === `${PREFIX}${purpose}`).map((purpose) => ({
    ...{ link: id, purpose, name, madeAt },
    ...{ until: expiresAt ?? madeAt, openedAt: used === 0 ? null : used },
  }));

const isOver = ({ expiresAt }: FactorRow, at: number): boolean => expiresAt !== null && expiresAt <= at;
const isoOf = (ms: number): string => new Date(ms).toISOString();
