import { execFileSync } from 'node:child_process';
import { join } from 'node:path';

const PROJECT = join(__dirname, '../..');
type Package = {
  readonly name: string;
  readonly licence: string;
  readonly installScript?: string;
  readonly from: string;
  readonly hashed: boolean;
};
const listed = (...more: readonly string[]): readonly Package[] =>
  JSON.parse(
    execFileSync(process.execPath, ['apps/cli/start/licences.mjs', '--json', ...more], {
      cwd: PROJECT,
      encoding: 'utf8',
      maxBuffer: 50_000_000,
    }),
  );

/** What a program under Apache-2.0 may be shipped with. */
const MAY_SHIP =
  /^\(?(?:MIT|MIT-0|ISC|0BSD|BSD-2-Clause|BSD-3-Clause|Apache-2\.0|BlueOak-1\.0\.0|CC0-1\.0|CC-BY-4\.0|OFL-1\.1|Unlicense|Zlib|Python-2\.0|MPL-2\.0|WTFPL)\b/;

describe('the packages this is made with', () => {
  it('are listed with their licences: each that ships may be shipped', () => {
    const shipped = listed('--runtime');
    expect(shipped.length).toBeGreaterThan(50);
    expect(shipped.filter(({ licence }) => !MAY_SHIP.test(licence))).toStrictEqual([]);
  });

  it('come from one registry, each with its hash', () => {
    const elsewhere = listed().filter(({ from, hashed }) => from !== 'registry.npmjs.org' || !hashed);
    expect(elsewhere).toStrictEqual([]);
  });

  it('run no script on being installed but those that package.json allows', () => {
    const running = listed().filter(({ installScript }) => installScript === 'runs');
    expect(running.map(({ name }) => name).sort()).toStrictEqual(
      expect.arrayContaining(['@swc/core', 'sqlite3']),
    );
  });
});
