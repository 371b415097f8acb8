import type { DataSource } from 'typeorm';
import type { DeadLetter, FeedRows, Notice, Subscription } from '../subscription';

type Detail = { readonly detail: string };
type StoredNotice = Omit<Notice, 'seq'> & { readonly seq: number | string };

/** What this file wrote itself is not validated again. */
const subscriptionOf = ({ detail }: Detail): Subscription => JSON.parse(detail) as Subscription;
const letterOf = ({ detail }: Detail): DeadLetter => JSON.parse(detail) as DeadLetter;

type Run = <T>(sql: string, parameters?: readonly unknown[]) => Promise<readonly T[]>;

export const feedTables = (source: DataSource): FeedRows => {
  const run: Run = <T>(sql: string, parameters: readonly unknown[] = []) =>
    source.query<readonly T[]>(sql, [...parameters]);
  const change = async (sql: string, ...parameters: readonly unknown[]): Promise<void> => {
    await run(sql, parameters);
  };
  return {
    ...subscriptions(run, change),
    ...notices(run),
    ...letters(run, change),
    close: () => source.destroy(),
  };
};

type Change = (sql: string, ...parameters: readonly unknown[]) => Promise<void>;

const subscriptions = (
  run: Run,
  change: Change,
): Pick<FeedRows, 'subscriptions' | 'subscription' | 'put' | 'keep' | 'end'> => ({
  subscriptions: async () =>
    (await run<Detail>('SELECT detail FROM feed_subscription')).map(subscriptionOf).sort(byAge),
  subscription: async (id) =>
    (await run<Detail>('SELECT detail FROM feed_subscription WHERE id = $1', [id])).map(subscriptionOf)[0],
  put: (subscription) =>
    change(
      'INSERT INTO feed_subscription (id, detail) VALUES ($1, $2)',
      subscription.id,
      JSON.stringify(subscription),
    ),
  keep: (subscription) =>
    change(
      // Placeholders stand in the order they are given: SQLite counts them as they come.
      'UPDATE feed_subscription SET detail = $1 WHERE id = $2',
      JSON.stringify(subscription),
      subscription.id,
    ),
  end: async (id) => {
    await change('DELETE FROM feed_letter WHERE subscription = $1', id);
    await change('DELETE FROM feed_subscription WHERE id = $1', id);
  },
});

const byAge = (a: Subscription, b: Subscription): number => a.madeAt - b.madeAt || (a.id < b.id ? -1 : 1);

const notices = (run: Run): Pick<FeedRows, 'note' | 'noticesAfter' | 'lastNotice'> => ({
  note: async ({ id, kind, subject, at, data }) => {
    const known = await run('SELECT id FROM feed_notice WHERE id = $1', [id]);
    if (known.length > 0) return false;
    // Two servers may notice the same at once: the first one's stands.
    await run(
      `INSERT INTO feed_notice (id, kind, subject, at, data) VALUES ($1, $2, $3, $4, $5)
       ON CONFLICT (id) DO NOTHING`,
      [id, kind, subject, at, data],
    );
    return true;
  },
  noticesAfter: async (seq, limit) =>
    (
      await run<StoredNotice>('SELECT * FROM feed_notice WHERE seq > $1 ORDER BY seq LIMIT $2', [seq, limit])
    ).map((row) => ({ ...row, seq: Number(row.seq) })),
  lastNotice: async () => {
    const [row] = await run<{ readonly last: number | string | null }>(
      'SELECT MAX(seq) AS last FROM feed_notice',
    );
    return Number(row?.last ?? 0);
  },
});

const letters = (run: Run, change: Change): Pick<FeedRows, 'bury' | 'letters' | 'letter' | 'dropLetter'> => ({
  bury: (letter) =>
    change(
      `INSERT INTO feed_letter (id, subscription, detail) VALUES ($1, $2, $3)
       ON CONFLICT (id) DO UPDATE SET detail = excluded.detail`,
      letter.id,
      letter.subscription,
      JSON.stringify(letter),
    ),
  letters: async () =>
    (await run<Detail>('SELECT detail FROM feed_letter')).map(letterOf).sort((a, b) => b.at - a.at),
  letter: async (id) =>
    (await run<Detail>('SELECT detail FROM feed_letter WHERE id = $1', [id])).map(letterOf)[0],
  dropLetter: (id) => change('DELETE FROM feed_letter WHERE id = $1', id),
});
