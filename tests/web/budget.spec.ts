import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

const PROJECT = join(__dirname, '../..');
type Chunk = { readonly file: string; readonly src?: string; readonly imports?: readonly string[] };
type Manifest = Readonly<Record<string, Chunk>>;

const KILOBYTE = 1_000;
/** A tablet on a plant's wireless must have the station screen before a lead looks up. */
const STATION_BUDGET = 120 * KILOBYTE;

describe('what a browser has to fetch', () => {
  let folder: string;
  let manifest: Manifest;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'studbook-web-'));
    execFileSync(
      process.execPath,
      ['node_modules/vite/bin/vite.js', 'build', 'apps/web', '--outDir', folder, '--logLevel', 'error'],
      { cwd: PROJECT, env: { ...process.env, NODE_ENV: 'production' } },
    );
    manifest = JSON.parse(readFileSync(join(folder, '.vite/manifest.json'), 'utf8'));
  }, 60_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  /** The chunk and all it cannot start without. */
  const needed = (key: string, seen = new Set<string>()): ReadonlySet<string> => {
    if (seen.has(key)) return seen;
    seen.add(key);
    for (const other of manifest[key]?.imports ?? []) needed(other, seen);
    return seen;
  };
  const filesFor = (...keys: readonly string[]): readonly string[] => [
    ...new Set(keys.flatMap((key) => [...needed(key)]).flatMap((key) => manifest[key]?.file ?? [])),
  ];
  const text = (file: string): string => readFileSync(join(folder, file), 'utf8');
  const gzipped = (files: readonly string[]): number =>
    files.reduce((sum, file) => sum + gzipSync(text(file)).length, 0);

  const STATION = ['index.html', 'src/screens/station/station-screen.tsx', 'src/words/es/floor.ts'] as const;

  it('is at most 120 kB of script for the station screen, React, both chunks and the longer language included', () => {
    const bytes = gzipped(filesFor(...STATION));
    process.stdout.write(`station screen: ${(bytes / KILOBYTE).toFixed(1)} kB of script, gzipped\n`);
    expect(bytes).toBeGreaterThan(40 * KILOBYTE);
    expect(bytes).toBeLessThanOrEqual(STATION_BUDGET);
  });

  it('brings no chart and no schema library to the station screen', () => {
    const code = filesFor(...STATION)
      .map(text)
      .join('\n');
    expect(code).not.toMatch(/CategoryScale|ZodError|\$ZodType/);
  });

  it('has charts only where charts are', () => {
    const quality = filesFor('src/screens/quality/quality-screen.tsx').map(text).join('\n');
    expect(quality).toMatch(/getDatasetMeta/);
    for (const screen of [
      'line/line-screen',
      'home/home-screen',
      'start/start-screen',
      'sign-in/sign-in-screen',
    ])
      expect(filesFor('index.html', `src/screens/${screen}.tsx`).map(text).join('\n')).not.toMatch(
        /getDatasetMeta/,
      );
  });

  it('holds nothing inline that a strict content security policy would stop', () => {
    const page = text('index.html');
    expect(page).not.toMatch(/<script(?![^>]*src=)/);
    expect(page).not.toMatch(/<style| style=| on[a-z]+=/);
    expect(page).not.toMatch(/https?:\/\//);
  });
});
