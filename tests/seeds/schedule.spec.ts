import { tell, waitUntil } from '../../seeds/src/flow';
import type { Flow } from '../../seeds/src/flow';
import { runSchedule } from '../../seeds/src/schedule';
import type { Reach } from '../../seeds/src/schedule';
import type { Said, Telling } from '../../seeds/src/telling';

const MINUTE_MS = 60_000;
const one = (serial: string, minute: number): Telling => ({
  name: 'work',
  body: { serial },
  actor: 'p-1',
  atMs: minute * MINUTE_MS,
});

/** A plant that answers each in its own time, and takes in what it knows at once, the rest when it has looked it up. */
const slowPlant = (): { readonly reach: Reach; readonly came: string[]; readonly clock: { now: number } } => {
  const came: string[] = [];
  const clock = { now: 0 };
  const known = new Set<string>();
  const seen = new Set<string>();
  let busy = 0;
  const answer: Said = { ok: true, key: 'k', answer: { position: 1, events: [], repeated: false } };
  return {
    came,
    clock,
    reach: {
      to: (atMs) => {
        clock.now = atMs;
      },
      isNewToThePlant: ({ body }) => {
        const isNew = !seen.has(String(body['serial']));
        seen.add(String(body['serial']));
        return isNew;
      },
      send: async ({ body, atMs }) => {
        const serial = String(body['serial']);
        busy += 1;
        if (!known.has(serial)) await new Promise((done) => setTimeout(done, busy % 2 === 0 ? 1 : 7));
        known.add(serial);
        came.push(`${serial} ${atMs / MINUTE_MS} at ${clock.now / MINUTE_MS}`);
        await new Promise((done) => setTimeout(done, 3));
        return answer;
      },
      look: () => Promise.resolve([]),
    },
  };
};

function* telling(serial: string, ...minutes: readonly number[]): Flow {
  for (const minute of minutes) yield* tell(one(serial, minute));
}

describe('the demonstration’s schedule', () => {
  it('sends what falls together by time, whoever the plant has to look up first', async () => {
    const { reach, came } = slowPlant();
    await runSchedule(
      [telling('A', 3), telling('B', 1, 60), telling('C', 2, 61)],
      100 * MINUTE_MS,
      reach,
      () => undefined,
    );
    expect(came.map((line) => line.split(' at ')[0])).toStrictEqual(['B 1', 'C 2', 'A 3', 'B 60', 'C 61']);
  });

  it('never sets the clock before what it sends, nor later than the half hour after which an entry is late', async () => {
    const { reach, came } = slowPlant();
    await runSchedule(
      [telling('A', 1, 9, 30, 31, 90), telling('B', 5, 26, 27, 28, 89)],
      100 * MINUTE_MS,
      reach,
      () => undefined,
    );
    for (const line of came) {
      const [, minute, clock] = (/ (\d+) at (\d+)$/.exec(line) ?? []).map(Number);
      expect([(clock ?? 0) >= (minute ?? 0), (clock ?? 0) - (minute ?? 0) <= 30]).toStrictEqual([true, true]);
    }
    expect(came).toHaveLength(10);
  });

  it('stops at the story’s end, in the middle of whatever is under way', async () => {
    const { reach, came } = slowPlant();
    await runSchedule(
      [telling('A', 1, 50, 120), telling('B', 99, 101)],
      100 * MINUTE_MS,
      reach,
      () => undefined,
    );
    expect(came.map((line) => line.split(' at ')[0])).toStrictEqual(['A 1', 'A 50', 'B 99']);
  });

  it('lets one wait for another', async () => {
    const { reach, came } = slowPlant();
    const woken = { ready: false };
    function* first(): Flow {
      yield* tell(one('A', 5));
      woken.ready = true;
    }
    function* second(): Flow {
      yield* waitUntil(40 * MINUTE_MS);
      if (woken.ready) yield* tell(one('B', 41));
    }
    await runSchedule([second(), first()], 100 * MINUTE_MS, reach, () => undefined);
    expect(came.map((line) => line.split(' at ')[0])).toStrictEqual(['A 5', 'B 41']);
  });
});
