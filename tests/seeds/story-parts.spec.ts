import { resolvePlan, readRulebook } from '@libs/rulebook';
import { createHash } from 'node:crypto';
import { resolve } from 'node:path';
import { demonstrationFiles, lastDayFor } from '../../seeds/src';
import { floorClock, workingDays } from '../../seeds/src/floor-clock';
import { planLine } from '../../seeds/src/line-plan';
import { valueFor } from '../../seeds/src/measured';
import type { Asked } from '../../seeds/src/measured';
import { orderHome } from '../../seeds/src/models';
import { demoPeople, signIns } from '../../seeds/src/people';
import { chanceFrom } from '../../seeds/src/random';

const FILES = demonstrationFiles(resolve(__dirname, '../..'));

describe('the demonstration’s source of chance', () => {
  it('gives the same for the same seed, and its branches do not move each other', () => {
    const one = chanceFrom('seed');
    const other = chanceFrom('seed');
    one.branch('x').hex(20);
    expect([one.hex(32), one.between(1, 6)]).toStrictEqual([other.hex(32), other.between(1, 6)]);
    expect(chanceFrom('seed').branch('a').hex(32)).not.toBe(chanceFrom('seed').branch('b').hex(32));
  });

  it('falls evenly: chi-square of 16 digits over 64 000 draws stays below 37.7, the 0.1 % point at 15 degrees', () => {
    const counts = new Map<string, number>();
    for (const digit of chanceFrom('even').hex(64_000)) counts.set(digit, (counts.get(digit) ?? 0) + 1);
    const chiSquare = [...counts.values()].reduce((sum, seen) => sum + (seen - 4_000) ** 2 / 4_000, 0);
    expect(counts.size).toBe(16);
    expect(chiSquare).toBeLessThan(37.7);
  });

  it('counts as Poisson does: mean and variance of 20 000 draws both near 2.5', () => {
    const chance = chanceFrom('poisson');
    const draws = Array.from({ length: 20_000 }, () => chance.count(2.5));
    const mean = draws.reduce((sum, one) => sum + one, 0) / draws.length;
    const variance = draws.reduce((sum, one) => sum + (one - mean) ** 2, 0) / draws.length;
    expect(Math.abs(mean - 2.5)).toBeLessThan(0.05);
    expect(Math.abs(variance - 2.5)).toBeLessThan(0.12);
  });
});

describe('the demonstration’s calendar', () => {
  const chicago = floorClock('America/Chicago');

  it('writes instants with the offset of the day: the clock went forward on 8 March 2026 in Chicago', () => {
    expect(chicago.instant(Date.parse('2026-03-06T12:00:00Z'))).toBe('2026-03-06T06:00:00.000-06:00');
    expect(chicago.instant(Date.parse('2026-03-09T12:00:00Z'))).toBe('2026-03-09T07:00:00.000-05:00');
    expect(chicago.instant(chicago.at('2026-07-01', 360))).toBe('2026-07-01T06:00:00.000-05:00');
  });

  it('works Monday to Friday', () => {
    expect(workingDays('2026-03-08', 6)).toStrictEqual([
      '2026-02-27',
      '2026-03-02',
      '2026-03-03',
      '2026-03-04',
      '2026-03-05',
      '2026-03-06',
    ]);
  });

  it('ends today only once the story’s last hour has passed at the plant', () => {
    expect(lastDayFor(FILES, Date.parse('2026-03-06T17:10:00Z'))).toBe('2026-03-05');
    expect(lastDayFor(FILES, Date.parse('2026-03-06T17:30:00Z'))).toBe('2026-03-06');
  });
});

describe('the line of the demonstration', () => {
  const at = (day: number, minute: number): number => day * 1_440 + minute;
  const stations = Array.from({ length: 16 }, (_, index) => `s${index}`);
  const plan = planLine(200, 16, chanceFrom('line'));
  const stays = Array.from({ length: 200 }, (_, section) => plan.stays(section, stations, at));

  it('takes every section through the stations in their order, none twice', () => {
    for (const own of stays) {
      expect(own.map(({ station }) => station)).toStrictEqual(stations.slice(0, own.length));
      for (const [index, stay] of own.entries()) expect(own[index + 1]?.fromMs ?? stay.toMs).toBe(stay.toMs);
    }
  });

  it('never has two sections stand at one station', () => {
    for (const station of stations) {
      const times = stays
        .flatMap((own) => own.filter((stay) => stay.station === station))
        .flatMap(({ fromMs, toMs, pulled }) =>
          pulled === null
            ? [[fromMs, toMs ?? Infinity] as const]
            : [[fromMs, pulled.atMs] as const, [pulled.backMs ?? Infinity, toMs ?? Infinity] as const],
        )
        .sort(([one], [other]) => one - other);
      for (const [index, [, until]] of times.entries()) {
        expect(times[index + 1]?.[0] ?? Infinity).toBeGreaterThanOrEqual(until);
      }
    }
  });
});

describe('the homes of the demonstration', () => {
  const read = readRulebook(FILES);
  const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

  it('are designs its rulebook can make a plan of, every one', () => {
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const chance = chanceFrom('orders');
    for (let number = 0; number < 150; number += 1) {
      const order = orderHome(number, '26', chance);
      for (const { design } of order.sections) {
        const plan = resolvePlan(read.rulebook, 1, { ...order.design, ...design }, sha256);
        expect(plan.ok ? [] : plan.problems).toStrictEqual([]);
      }
    }
  });
});

describe('the values people type in the demonstration', () => {
  const asked = (required: string, kind: Asked['kind'] = 'measure'): Asked => ({
    characteristic: 'c',
    label: { en: '', es: '' },
    kind,
    unit: null,
    unitSymbol: null,
    required,
    requiredSays: { en: '', es: '' },
    test: null,
    from: 'entry',
    asked: 'always',
    worstOf: 1,
    grade: 'hold',
    source: { kind: 'practice', reference: '', row: '' },
  });
  const draws = (one: Asked, good: boolean): readonly number[] => {
    const chance = chanceFrom('values');
    return Array.from({ length: 300 }, () => Number(valueFor(one, chance, good).value));
  };

  it.each([
    ['>= 7', 'count', (value: number) => value >= 7],
    ['<= 0.125', 'measure', (value: number) => value <= 0.125],
    ['< 6', 'measure', (value: number) => value < 6],
    ['> 3', 'measure', (value: number) => value > 3],
    ['[10..14]', 'measure', (value: number) => value >= 10 && value <= 14],
    ['0', 'count', (value: number) => value === 0],
  ] as const)('meet %s when the work is right, and miss it when it is not', (required, kind, meets) => {
    expect(draws(asked(required, kind), true).every(meets)).toBe(true);
    expect(draws(asked(required, kind), false).some(meets)).toBe(false);
  });

  it('are decimal text as the record wants it', () => {
    const chance = chanceFrom('text');
    for (let n = 0; n < 300; n += 1) {
      expect(valueFor(asked('<= 0.125'), chance).value).toMatch(/^-?(0|[1-9]\d*)(\.\d+)?$/);
    }
  });
});

describe('the people of the demonstration', () => {
  it('are each somebody else, and those who sign in have a PIN of their own', () => {
    const people = demoPeople();
    expect(new Set(people.map(({ person }) => person)).size).toBe(people.length);
    expect(new Set(people.map(({ name }) => name)).size).toBe(people.length);
    const shown = signIns(people);
    expect(new Set(shown.map(({ pin }) => pin)).size).toBe(shown.length);
    for (const role of ['station-lead', 'inspector', 'quality-manager', 'auditor']) {
      expect(shown.some(({ roles }) => roles.includes(role))).toBe(true);
    }
  });
});
