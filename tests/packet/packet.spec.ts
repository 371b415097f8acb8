import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { PacketHome } from '@libs/packet';
import { reportFile } from '@libs/packet';
import { unzipSync } from 'fflate';
import { tellStory } from '../support/demonstration-plant';
import type { ToldPlant } from '../support/demonstration-plant';

/** Of poppler; where it is not installed, the paper is not read back. */
const readsPaper = spawnSync('pdftotext', ['-v']).status === 0;
if (!readsPaper) process.stderr.write('\npdftotext is not here: the paper of a packet is not read back.\n\n');

describe('a packet', () => {
  let told: ToldPlant;
  let home: PacketHome;
  beforeAll(async () => {
    told = await tellStory({ homes: 4, seed: 'packet', lastDay: '2026-11-20' });
    const found = await told.plant.packetHome('H26-1001', await told.plant.head());
    if (found === undefined) throw new Error('The demonstration has no home H26-1001');
    home = found;
  });
  afterAll(() => told.clear());

  it('holds the record to read beside the proofs, in both languages, and how to check it by hand', async () => {
    const packet = await told.plant.packet('H26-1001', null);
    const names = Object.keys(unzipSync(new Uint8Array(packet?.zip ?? []))).toSorted();
    for (const name of ['README.txt', 'report.pdf', 'expediente.pdf', 'history.epcis.json', 'history.xes'])
      expect(names).toContain(name);
    expect(names.filter((name) => name.startsWith('csv/')).length).toBeGreaterThanOrEqual(5);
    expect(names).toContain('evidence/events.jsonl');
  });

  it('of an earlier position is the same bytes whenever it is asked for, its paper too', async () => {
    const at = home.events[Math.floor(home.events.length / 2)]?.event.position ?? 1;
    const [first, second] = [
      await told.plant.packet('H26-1001', at),
      await told.plant.packet('H26-1001', at),
    ];
    expect(first?.position).toBe(at);
    expect(Buffer.from(first?.zip ?? []).equals(Buffer.from(second?.zip ?? []))).toBe(true);
  });

  it('of a serial that nobody knows is none', async () => {
    expect(await told.plant.packet('H99-1', null)).toBeUndefined();
  });

  (readsPaper ? it : it.skip)(
    'has every event of the history on its paper, with the sentence that tells it',
    async () => {
      const folder = mkdtempSync(join(tmpdir(), 'studbook-paper-'));
      const { bytes } = await reportFile(home, { language: 'en', checkpoint: [], attached: [] });
      writeFileSync(join(folder, 'report.pdf'), bytes);
      const paper = execFileSync('pdftotext', ['-raw', join(folder, 'report.pdf'), '-'], {
        encoding: 'utf8',
      });
      rmSync(folder, { recursive: true });

      const words = paper.replace(/\s+/g, ' ');
      const missing = home.events.filter(({ event, says }) => {
        const [opening = ''] = says.en.split(/[.:,]/);
        return !new RegExp(`\\b${event.position}\\b`).test(words) || !words.includes(opening.slice(0, 12));
      });
      expect(missing.map(({ event }) => event.position)).toStrictEqual([]);
    },
  );
});
