import type { FactorKind, FactorRow } from '../access-rows';
import type { Doorkeeping } from '../doorkeeping';
import { endSessionsOf } from '../doorkeeping';
import { hashGuessable, hashSecret, newSecret } from '../secret';
import { codeAddress, codeStep, newCodeSecret } from './codes';
import { plainCode, readableCode } from './readable-code';

/** A factor as it is listed: nothing of what it keeps. */
export type ListedFactor = Omit<FactorRow, 'data' | 'person' | 'expiresAt'>;

/** What a person signs in with besides a PIN, and how they change it. Whoever calls has had them proven first. */
export type OwnFactors = {
  readonly factorsOf: (person: string) => Promise<readonly ListedFactor[]>;
  /** Ends every other session of theirs. `session`: the one that stays. */
  readonly setPassword: (person: string, password: string, session?: string) => Promise<void>;
  /** What a phone is told, until a first code of it is right. */
  readonly beginCodes: (
    person: string,
    label: string,
  ) => Promise<{ readonly secret: string; readonly address: string }>;
  /** The recovery codes, shown once; undefined: the code is wrong. */
  readonly confirmCodes: (person: string, code: string) => Promise<readonly string[] | undefined>;
  /** Takes one away, or all of some kinds. False: there is none. */
  readonly endFactor: (person: string, id: string, by: string) => Promise<boolean>;
  readonly endFactors: (person: string, kinds: readonly FactorKind[], by: string) => Promise<void>;
  /** Lets somebody choose a password, once and soon. The code is shown here only. */
  readonly invite: (person: string, by: string) => Promise<{ readonly code: string; readonly until: number }>;
  /** Who was invited by this code; it is used up. */
  readonly takeInvitation: (code: string) => Promise<string | undefined>;
  /** Which person an account at the plant's identity provider is. */
  readonly linkProvider: (person: string, subject: string, by: string) => Promise<void>;
  readonly providersPerson: (subject: string) => Promise<string | undefined>;
};

const RECOVERY_CODES = 10;
/** 24 letters of 4.8 bits: 115 bits, so that a plain SHA-256 of it is enough to keep (ASVS 5.0 6.5.2). */
const RECOVERY_LETTERS = 24;
const INVITATION_LETTERS = 24;
/** Handed over on a Friday, used on a Monday. */
const INVITED_FOR_MS = 72 * 3_600_000;
const ID_LETTERS = 12;

/** What the functions below share: making a factor, and dropping all of some kinds. */
type Making = Doorkeeping & {
  readonly made: (person: string, kind: FactorKind, data: string, more?: Partial<FactorRow>) => Promise<void>;
  readonly drop: (person: string, kinds: readonly FactorKind[]) => Promise<readonly FactorRow[]>;
};

export const ownFactors = (door: Doorkeeping): OwnFactors => {
  const { rows, now } = door;
  const making: Making = {
    ...door,
    made: (person, kind, data, more = {}) =>
      rows.putFactor({
        ...{ id: newSecret('').slice(0, ID_LETTERS), person, kind, name: '', data },
        ...{ madeAt: now(), used: 0, expiresAt: null, ...more },
      }),
    drop: async (person, kinds) => {
      const going = (await rows.factors(person)).filter(({ kind }) => kinds.includes(kind));
      for (const { id } of going) await rows.dropFactor(id);
      return going;
    },
  };
  return { ...listing(making), ...phoneCodes(making), ...invitations(making), ...provider(making) };
};

const listing = ({
  rows,
  notes,
  drop,
}: Making): Pick<OwnFactors, 'factorsOf' | 'endFactor' | 'endFactors'> => ({
  factorsOf: async (person) =>
    (await rows.factors(person)).map(({ id, kind, name, madeAt, used }) => ({
      ...{ id, kind, name, madeAt, used },
    })),
  endFactor: async (person, id, by) => {
    const row = (await rows.factors(person)).find((one) => one.id === id);
    if (row === undefined) return false;
    await notes.note({ type: 'FactorRemoved', data: { account: person, factor: row.kind } }, by);
    await rows.dropFactor(id);
    return true;
  },
  endFactors: async (person, kinds, by) => {
    for (const { kind } of await drop(person, kinds))
      if (kind !== 'recovery')
        await notes.note({ type: 'FactorRemoved', data: { account: person, factor: kind } }, by);
  },
});

const phoneCodes = ({
  rows,
  now,
  notes,
  vault,
  made,
  drop,
}: Making): Pick<OwnFactors, 'beginCodes' | 'confirmCodes'> => ({
  beginCodes: async (person, label) => {
    const secret = newCodeSecret();
    const id = newSecret('').slice(0, ID_LETTERS);
    await drop(person, ['code-unconfirmed']);
    await made(person, 'code-unconfirmed', vault.seal(secret, id), { id });
    return { secret, address: codeAddress(secret, label) };
  },
  confirmCodes: async (person, code) => {
    const [begun] = (await rows.factors(person)).filter(({ kind }) => kind === 'code-unconfirmed');
    if (begun === undefined) return undefined;
    const secret = vault.open(begun.data, begun.id);
    const step = await codeStep(secret, code.replace(/\s/g, ''), { now: now(), usedStep: 0 });
    if (step === undefined) return undefined;

    await notes.note({ type: 'FactorAdded', data: { account: person, factor: 'code' } });
    await drop(person, ['code', 'recovery']);
    await rows.putFactor({ ...begun, kind: 'code', used: step });
    const spare = Array.from({ length: RECOVERY_CODES }, () => readableCode(RECOVERY_LETTERS));
    for (const one of spare) await made(person, 'recovery', hashSecret(plainCode(one)));
    return spare;
  },
});

const invitations = (making: Making): Pick<OwnFactors, 'setPassword' | 'invite' | 'takeInvitation'> => {
  const { rows, now, cost, notes, made, drop } = making;
  return {
    setPassword: async (person, password, session) => {
      const hash = await hashGuessable(password, cost);
      await notes.note({ type: 'AccessGiven', data: { account: person, means: 'password' } });
      await drop(person, ['password', 'invitation']);
      await made(person, 'password', hash);
      const but = session === undefined ? undefined : hashSecret(session);
      await endSessionsOf(making, person, { by: person, but });
    },
    invite: async (person, by) => {
      const code = readableCode(INVITATION_LETTERS);
      const until = now() + INVITED_FOR_MS;
      await notes.note({ type: 'AccessGiven', data: { account: person, means: 'invitation' } }, by);
      await drop(person, ['invitation']);
      await made(person, 'invitation', hashSecret(plainCode(code)), { expiresAt: until });
      return { code, until };
    },
    takeInvitation: async (code) => {
      const [row] = await rows.factorsWith('invitation', hashSecret(plainCode(code)));
      if (row === undefined || now() >= (row.expiresAt ?? 0)) return undefined;
      await rows.dropFactor(row.id);
      return row.person;
    },
  };
};

const provider = ({
  rows,
  notes,
  made,
  drop,
}: Making): Pick<OwnFactors, 'linkProvider' | 'providersPerson'> => ({
  linkProvider: async (person, subject, by) => {
    await notes.note({ type: 'FactorAdded', data: { account: person, factor: 'provider' } }, by);
    for (const { id } of await rows.factorsWith('provider', subject)) await rows.dropFactor(id);
    await drop(person, ['provider']);
    await made(person, 'provider', subject);
  },
  providersPerson: async (subject) => (await rows.factorsWith('provider', subject))[0]?.person,
});
