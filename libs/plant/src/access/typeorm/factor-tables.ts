import type { AccessRows, FactorRow, TabletRow } from '../access-rows';
import { numberOrNull } from './run';
import type { Run, Stored } from './run';

const PUT_FACTOR = `INSERT INTO access_factor (id, person, kind, name, data, made_at, used, expires_at)
  VALUES (?, ?, ?, ?, ?, ?, ?, ?)
  ON CONFLICT (id) DO UPDATE SET
    person = excluded.person, kind = excluded.kind, name = excluded.name, data = excluded.data,
    made_at = excluded.made_at, used = excluded.used, expires_at = excluded.expires_at`;
const PUT_TABLET = `INSERT INTO access_tablet (tablet, name, stations, hash, bound, made_at, seen_at, expires_at)
  VALUES (?, ?, ?, ?, ?, ?, ?, ?)
  ON CONFLICT (tablet) DO UPDATE SET
    name = excluded.name, stations = excluded.stations, hash = excluded.hash, bound = excluded.bound,
    seen_at = excluded.seen_at, expires_at = excluded.expires_at`;

type StoredFactor = Omit<FactorRow, 'madeAt' | 'used' | 'expiresAt'> & {
  readonly made_at: Stored;
  readonly used: Stored;
  readonly expires_at: Stored | null;
};
type StoredTablet = Omit<TabletRow, 'bound' | 'madeAt' | 'seenAt' | 'expiresAt'> & {
  readonly bound: Stored;
  readonly made_at: Stored;
  readonly seen_at: Stored;
  readonly expires_at: Stored | null;
};

const factorOf = ({ made_at, used, expires_at, ...row }: StoredFactor): FactorRow => ({
  ...row,
  madeAt: Number(made_at),
  used: Number(used),
  expiresAt: numberOrNull(expires_at),
});
const tabletOf = ({ bound, made_at, seen_at, expires_at, ...row }: StoredTablet): TabletRow => ({
  ...row,
  bound: Number(bound) === 1,
  madeAt: Number(made_at),
  seenAt: Number(seen_at),
  expiresAt: numberOrNull(expires_at),
});

type FactorTables = Pick<
  AccessRows,
  'factors' | 'factorsWith' | 'factor' | 'putFactor' | 'dropFactor' | 'useFactor'
>;
type TabletTables = Pick<AccessRows, 'tablets' | 'tabletWith' | 'putTablet' | 'dropTablet' | 'tabletSeen'>;

export const factorTables = (run: Run): FactorTables => {
  const read = async (where: string, ...parameters: readonly unknown[]): Promise<readonly FactorRow[]> =>
    (
      await run<StoredFactor>(`SELECT * FROM access_factor WHERE ${where} ORDER BY made_at, id`, parameters)
    ).map(factorOf);
  return {
    factors: (person) => read('person = ?', person),
    factorsWith: (kind, data) => read('kind = ? AND data = ?', kind, data),
    factor: async (id) => (await read('id = ?', id))[0],
    putFactor: async ({ id, person, kind, name, data, madeAt, used, expiresAt }) => {
      await run(PUT_FACTOR, [id, person, kind, name, data, madeAt, used, expiresAt]);
    },
    dropFactor: async (id) => {
      await run('DELETE FROM access_factor WHERE id = ?', [id]);
    },
    useFactor: async (id, used) => {
      await run('UPDATE access_factor SET used = ? WHERE id = ?', [used, id]);
    },
  };
};

export const tabletTables = (run: Run): TabletTables => ({
  tablets: async () =>
    (await run<StoredTablet>('SELECT * FROM access_tablet ORDER BY name, tablet')).map(tabletOf),
  tabletWith: async (hash) =>
    (await run<StoredTablet>('SELECT * FROM access_tablet WHERE hash = ?', [hash])).map(tabletOf)[0],
  putTablet: async ({ tablet, name, stations, hash, bound, madeAt, seenAt, expiresAt }) => {
    await run(PUT_TABLET, [tablet, name, stations, hash, bound ? 1 : 0, madeAt, seenAt, expiresAt]);
  },
  dropTablet: async (tablet) => {
    await run('DELETE FROM access_secret WHERE tablet = ?', [tablet]);
    await run('DELETE FROM access_tablet WHERE tablet = ?', [tablet]);
  },
  tabletSeen: async (tablet, at) => {
    await run('UPDATE access_tablet SET seen_at = ? WHERE tablet = ?', [at, tablet]);
  },
});
