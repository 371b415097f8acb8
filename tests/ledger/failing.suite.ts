import type { Keeper, Sql } from '@libs/ledger';
import { CommitFailed } from '@libs/ledger';
import { askedOf, bin, eventsOf, onBin, put } from '../support/bin';
import type { LedgerHouse } from '../support/ledger-house';

/** Counts parts put, in a table of its own, and cannot bear one note. */
const counter = (): Keeper & { readonly drops: () => number } => {
  let drops = 0;
  return {
    name: 'counter',
    keep: async (events, sql) => {
      for (const { position, data } of events) {
        await sql.query('INSERT INTO counted (position) VALUES ($1)', [position]);
        if (data['note'] === 'unbearable') throw new Error('the keeper cannot bear this');
      }
    },
    dropped: () => {
      drops += 1;
    },
    drops: () => drops,
  };
};

/** Stands still at a note that says so, as a slow disk would, until it is let go; fails then where told to. */
const slow = (): Keeper & {
  readonly reached: Promise<void>;
  readonly letGo: (error?: Error) => Promise<void>;
} => {
  let arrive = (): void => undefined;
  let go = (_error?: Error): void => undefined;
  const reached = new Promise<void>((done) => (arrive = done));
  const free = new Promise<void>((done, fail) => {
    go = (error) => (error === undefined ? done() : fail(error));
  });
  return {
    name: 'slow',
    keep: async (events) => {
      if (events.every(({ data }) => data['note'] !== 'slow')) return;
      arrive();
      await free;
    },
    dropped: () => undefined,
    reached,
    // Not before the writer has had time to decide what was asked meanwhile.
    letGo: async (error) => {
      for (let turn = 0; turn < 5; turn += 1) await new Promise((next) => setImmediate(next));
      go(error);
    },
  };
};

const counted = async (sql: Sql): Promise<readonly number[]> => {
  const rows = await sql.query<{ position: number }>('SELECT position FROM counted ORDER BY position');
  return rows.map(({ position }) => position);
};

export const failingSuite = (house: () => LedgerHouse): void => {
  const openCounted = async (keeper: Keeper) => {
    const ledger = await house().open({ keepers: [keeper] });
    await ledger.transaction((sql) => sql.query('CREATE TABLE counted (position BIGINT PRIMARY KEY)'));
    return ledger;
  };

  it('keeps views in the very transaction that records the events', async () => {
    const ledger = await openCounted(counter());

    const told = await Promise.all(['a', 'b', 'c'].map((key) => askedOf(ledger, key, put('a'), put('b'))));

    expect(await counted(ledger.reader)).toStrictEqual(
      told.flatMap(eventsOf).map(({ position }) => position),
    );
  });

  it('leaves nothing of a command whose views fail, tells its caller, and records its neighbours and the next', async () => {
    const keeper = counter();
    const ledger = await openCounted(keeper);
    await askedOf(ledger, 'key-1', put('a', 1));

    const [before, failed, after] = await Promise.all([
      askedOf(ledger, 'key-2', put('a', 10)),
      askedOf(ledger, 'key-3', put('a', 100, 'unbearable')).catch((fault: unknown) => fault),
      askedOf(ledger, 'key-4', put('a', 1_000)),
    ]);
    const next = await askedOf(ledger, 'key-5', put('a', 10_000));

    expect(failed).toBeInstanceOf(CommitFailed);
    expect(failed).toMatchObject({
      remedy: 'send-again',
      message: expect.stringContaining('cannot bear this'),
    });
    expect(
      [before, after, next].flatMap((told) => (told.ok ? told.events : [])).map((e) => e.position),
    ).toStrictEqual([2, 3, 4]);
    expect(await ledger.state(bin, 'a')).toBe(11_011);
    expect(await counted(ledger.reader)).toStrictEqual([1, 2, 3, 4]);
    expect(keeper.drops()).toBeGreaterThan(0);
  });

  it('decides on top of a commit on its way to disk, and repeats the answer to a key that is in it', async () => {
    const keeper = slow();
    const ledger = await house().open({ keepers: [keeper] });
    await askedOf(ledger, 'key-0', put('b', 1));

    const first = askedOf(ledger, 'key-1', put('a', 10, 'slow'));
    await keeper.reached;
    const onTop = Promise.all([
      askedOf(ledger, 'key-2', onBin('a', { type: 'Take', count: 7 })),
      askedOf(ledger, 'key-3', onBin('a', { type: 'Take', count: 7 })),
      askedOf(ledger, 'key-1', put('a', 10, 'slow')),
      askedOf(ledger, 'key-4', onBin('a', { type: 'TakeWhileOther', count: 3 }, 'c')),
    ]);
    await keeper.letGo();

    expect(await first).toMatchObject({ ok: true, repeated: false, events: [{ position: 2, version: 1 }] });
    expect(await onTop).toMatchObject([
      { ok: true, events: [{ position: 3, version: 2 }] },
      { ok: false, rejection: { code: 'too-few', left: 3 } },
      { ok: true, repeated: true, events: [{ position: 2 }] },
      { ok: false, rejection: { code: 'other-empty' } },
    ]);
    expect(await ledger.state(bin, 'a')).toBe(3);
  });

  it('drops all that was decided on top of a commit that then failed, and decides it anew', async () => {
    const keeper = slow();
    const ledger = await house().open({ keepers: [keeper] });
    await askedOf(ledger, 'key-0', put('a', 1));

    const failed = askedOf(ledger, 'key-1', put('a', 10, 'slow')).catch((fault: unknown) => fault);
    await keeper.reached;
    const onTop = Promise.all([
      askedOf(ledger, 'key-2', onBin('a', { type: 'Take', count: 5 })),
      askedOf(ledger, 'key-3', put('a', 3)),
    ]);
    await keeper.letGo(new Error('the disk is full'));

    expect(await failed).toMatchObject({ name: 'CommitFailed', remedy: 'send-again' });
    expect(await onTop).toMatchObject([
      { ok: false, rejection: { code: 'too-few', left: 1 } },
      { ok: true, events: [{ position: 2, version: 2 }] },
    ]);
    expect(await ledger.state(bin, 'a')).toBe(4);
  });

  it('tells only its own caller of a decision that crashed', async () => {
    const ledger = await house().open();

    const [before, crashed, after] = await Promise.all([
      askedOf(ledger, 'key-1', put('a')),
      askedOf(ledger, 'key-2', put('a'), onBin('a', { type: 'Stumble' })).catch((error: unknown) => error),
      askedOf(ledger, 'key-3', put('a')),
    ]);

    expect(crashed).toMatchObject({ message: 'stumbled' });
    expect([before.ok, after.ok, await ledger.state(bin, 'a')]).toStrictEqual([true, true, 2]);
  });

  it('leaves nothing of a transaction of its own that fails, and lets no commit into one', async () => {
    const ledger = await openCounted(counter());
    const order: string[] = [];

    const failed = ledger.transaction(async (sql) => {
      await sql.query('INSERT INTO counted (position) VALUES (99)');
      await new Promise((go) => setImmediate(go));
      order.push('transaction');
      throw new Error('not this time');
    });
    const told = askedOf(ledger, 'key-1', put('a')).then(() => order.push('commit'));

    await expect(failed).rejects.toThrow('not this time');
    await told;
    expect(order).toStrictEqual(['transaction', 'commit']);
    expect(await counted(ledger.reader)).toStrictEqual([1]);
  });

  it.each(['event', 'asking', 'ledger'])(
    'refuses to have anything in table %s changed or deleted',
    async (table) => {
      const ledger = await house().open();
      await askedOf(ledger, 'key-1', put('a'));
      const [column] = table === 'event' ? ['body'] : table === 'asking' ? ['key'] : ['name'];

      await expect(house().tamper(`UPDATE ${table} SET ${column} = 'x'`)).rejects.toThrow(
        'The ledger only grows',
      );
      await expect(house().tamper(`DELETE FROM ${table}`)).rejects.toThrow('The ledger only grows');
    },
  );
};
