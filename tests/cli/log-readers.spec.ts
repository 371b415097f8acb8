import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { csvLog } from '../../apps/cli/src/import/csv-log';
import { fileDigest, importKey, rowMarks } from '../../apps/cli/src/import/import-key';
import type { LogRow } from '../../apps/cli/src/import/log-row';
import { timeReader } from '../../apps/cli/src/import/log-time';
import { serialsOf } from '../../apps/cli/src/import/serials';
import { xesLog } from '../../apps/cli/src/import/xes-log';

const file = (name: string, text: string): string => {
  const path = join(mkdtempSync(join(tmpdir(), 'log-readers-')), name);
  writeFileSync(path, text);
  return path;
};
const allOf = async (rows: AsyncIterable<LogRow>): Promise<readonly LogRow[]> => {
  const read: LogRow[] = [];
  for await (const row of rows) read.push(row);
  return read;
};
const csv = (text: string, delimiter = ','): Promise<readonly LogRow[]> =>
  allOf(csvLog(file('log.csv', text), delimiter));

describe('reading a log in CSV, by the rules of RFC 4180 section 2', () => {
  it('takes CRLF line ends, and a last line without one (rules 1 and 2)', async () => {
    expect(await csv('a,b\r\naaa,bbb\r\nzzz,yyy')).toStrictEqual([
      { line: 2, fields: { a: 'aaa', b: 'bbb' } },
      { line: 3, fields: { a: 'zzz', b: 'yyy' } },
    ]);
  });

  it('takes fields in double quotes, with line breaks, commas and doubled quotes in them (rules 5 to 7)', async () => {
    expect(await csv('a,b,c\r\n"aaa","b\r\nbb","c,c"\r\n"a""a",x,y\r\n')).toStrictEqual([
      { line: 2, fields: { a: 'aaa', b: 'b\r\nbb', c: 'c,c' } },
      { line: 4, fields: { a: 'a"a', b: 'x', c: 'y' } },
    ]);
  });

  it('takes spaces as part of a field (rule 4)', async () => {
    expect(await csv('a,b\n aaa , bbb\n')).toStrictEqual([{ line: 2, fields: { a: ' aaa ', b: ' bbb' } }]);
  });

  it('leaves a byte order mark out of the first name', async () => {
    expect(await csv('\uFEFFserial;step\nP-1;turn\n', ';')).toStrictEqual([
      { line: 2, fields: { serial: 'P-1', step: 'turn' } },
    ]);
  });

  it('says which row has too few or too many columns, and goes on', async () => {
    const rows = await csv('a,b\n1\n1,2,3\n1,2\n');
    expect(rows.map(({ line, broken }) => [line, broken])).toStrictEqual([
      [2, 'has 1 columns where the header has 2'],
      [3, 'has 3 columns where the header has 2'],
      [4, undefined],
    ]);
  });

  it('refuses the row that opens a quote and never closes it, and takes those above and below', async () => {
    const rows = await csv('a,b\n0,1\n1,"2\n3,4\n5,"6 7"\n');
    expect(rows.map(({ line, broken }) => [line, broken !== undefined])).toStrictEqual([
      [2, false],
      [3, true],
      [4, false],
      [5, false],
    ]);
    expect(rows[3]?.fields).toStrictEqual({ a: '5', b: '6 7' });
  });

  it('refuses it too where a quote further down closes it', async () => {
    const rows = await csv('a,b\n1,"2\n3,4\n5,",9\n6,7\n');
    expect(rows.filter(({ broken }) => broken === undefined).map(({ line }) => line)).toStrictEqual([3, 5]);
  });

  it('names file and line of a column that stands twice', async () => {
    await expect(csv('a,a\n1,2\n')).rejects.toThrow(/line 1: column "a" stands twice/);
    await expect(csv('')).rejects.toThrow(/the file is empty/);
  });
});

describe('reading a log in XES, by IEEE 1849-2016', () => {
  const sample = join(__dirname, 'samples', 'pumps.xes');

  it('gives each event with its trace, and none of what is declared for all (clause 5: log, trace, event)', async () => {
    const rows = await allOf(xesLog(sample));
    expect(rows).toHaveLength(6);
    expect(rows[2]?.fields).toStrictEqual({
      'trace:concept:name': 'P-1',
      'concept:name': 'assemble & seal',
      'org:resource': 'Petra',
      'lifecycle:transition': 'complete',
      'time:timestamp': '2026-03-02T09:40:00.5+01:00',
    });
    expect(rows[3]?.fields['trace:concept:name']).toBe('P-2');
  });

  it('reads what was written over many chunks, names and entities cut in two', async () => {
    const events = Array.from(
      { length: 4_000 },
      (_, n) => `<event><string key="concept:name" value="step &lt;${n}&gt;"/></event>`,
    );
    const rows = await allOf(
      xesLog(file('long.xes', `<log><trace><id key="x" value="1"/>${events.join('')}</trace></log>`)),
    );
    expect(rows.map(({ fields }) => fields['concept:name'])).toStrictEqual(
      events.map((_, n) => `step <${n}>`),
    );
  });

  it('names file and line where the XML breaks off, and says when it is no log', async () => {
    await expect(allOf(xesLog(file('cut.xes', '<log>\n<trace>\n<event>')))).rejects.toThrow(
      /cut\.xes, line 3/,
    );
    await expect(allOf(xesLog(file('page.xes', '<html></html>')))).rejects.toThrow(/no <log> element/);
  });
});

describe('reading the times of a log', () => {
  it.each([
    // RFC 3339 section 5.8, the examples that name an offset.
    ['iso', 'UTC', '1985-04-12T23:20:50.52Z', '1985-04-12T23:20:50.520Z'],
    ['iso', 'UTC', '1996-12-19T16:39:57-08:00', '1996-12-19T16:39:57.000-08:00'],
    ['iso', 'Europe/Berlin', '2026-07-01 06:30', '2026-07-01T06:30:00.000+02:00'],
    ['iso', 'America/Chicago', '2026-01-05T06:30:10,25', '2026-01-05T06:30:10.250-06:00'],
    ['dd.MM.yyyy HH:mm', 'Europe/Berlin', '02.03.2026 05:45', '2026-03-02T05:45:00.000+01:00'],
    ['MM/dd/yyyy HH:mm:ss', 'America/Chicago', '07/04/2026 13:00:01', '2026-07-04T13:00:01.000-05:00'],
    ['epoch-s', 'UTC', '482196050', '1985-04-12T23:20:50.000+00:00'],
    ['epoch-ms', 'Asia/Kathmandu', '1767225600250', '2026-01-01T05:45:00.250+05:45'],
  ])('%s in %s: %s', (format, zone, text, instant) => {
    expect(timeReader(format, zone)(text)).toBe(instant);
  });

  it('keeps to the clock of the day when it changes: 29 March 2026 in Berlin', () => {
    const read = timeReader('yyyy-MM-dd HH:mm', 'Europe/Berlin');
    expect([read('2026-03-29 01:30'), read('2026-03-29 03:30')]).toStrictEqual([
      '2026-03-29T01:30:00.000+01:00',
      '2026-03-29T03:30:00.000+02:00',
    ]);
  });

  it.each(['2026-02-30 05:00', '2026-13-01 05:00', 'yesterday', '', '2026-03-02 25:00'])(
    'does not guess what "%s" may mean',
    (text) => {
      expect(timeReader('iso', 'UTC')(text)).toBeUndefined();
      expect(timeReader('yyyy-MM-dd HH:mm', 'UTC')(text)).toBeUndefined();
    },
  );
});

describe('the key of an imported row', () => {
  const keysOf = (rows: readonly (readonly [string, string])[]): readonly string[] => {
    const marked = rowMarks();
    return rows.map(([text, time]) => importKey(marked(text, time), 4));
  };
  const MONDAY = [
    ['P-1 turn', '2026-03-02 07:00'],
    ['P-1 test', '2026-03-02 07:30'],
    ['P-1 test', '2026-03-02 07:30'],
    ['P-2 turn', '2026-03-02 08:10'],
  ] as const;

  it('is a UUID of version 8 and the variant of RFC 9562, another for each telling of a row', () => {
    const mark = rowMarks()('P-1 turn', '2026-03-02 07:00');
    const keys = [0, 1, 6].map((part) => importKey(mark, part));
    for (const key of keys) {
      expect(key).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    }
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('is the same in a longer export of the log, and tells rows that say the same apart', () => {
    const keys = keysOf(MONDAY);
    expect(keysOf([...MONDAY, ['P-2 test', '2026-03-03 07:00']]).slice(0, 4)).toStrictEqual(keys);
    expect(new Set(keys).size).toBe(4);
  });

  it('ascends with the time of a log in order, so that the key index stays warm', () => {
    const times = keysOf(MONDAY).map((key) => key.slice(0, 13));
    expect([...times].sort()).toStrictEqual(times);
  });

  it('knows a file by its SHA-256: FIPS 180-4, the one-block example', async () => {
    expect(await fileDigest(file('log.csv', 'abc'))).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
  });
});

describe('the serial of an imported row', () => {
  it('is written with the characters that a label can carry', () => {
    expect(serialsOf().take('Los 12/3 (rot)')).toStrictEqual({ ok: true, id: 'Los-12-3-rot-' });
  });

  it('is never another one that differs only in what a label cannot carry', () => {
    const serials = serialsOf();
    serials.take('A 12');
    expect(serials.take('A/12')).toMatchObject({
      ok: false,
      reason: expect.stringContaining('"A 12"') as unknown,
    });
    expect(serials.take('A 12')).toStrictEqual({ ok: true, id: 'A-12' });
  });
});
