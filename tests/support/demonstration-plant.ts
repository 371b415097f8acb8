import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { canonicalJson } from '@libs/kernel';
import type { Envelope } from '@libs/kernel';
import { leafOf } from '@libs/ledger';
import { dataFolder, openPlantAt } from '@libs/plant';
import type { Plant } from '@libs/plant';
import { demonstrationFiles, demonstrationRandom, ledgerRoot, simulate } from '../../seeds/src';
import type { Simulated } from '../../seeds/src';
import { eventsIn } from './ledger-file';

const ROOT = resolve(__dirname, '../..');

export type Wish = { readonly homes: number; readonly seed: string; readonly lastDay: string };

export type ToldPlant = {
  readonly plant: Plant;
  readonly simulated: Simulated;
  readonly ledgerFile: string;
  readonly events: () => Promise<readonly Envelope[]>;
  readonly clear: () => Promise<void>;
};

/**
 * The demonstration's story told to a plant in a folder of its own, its views kept at every commit. `through`: what
 * stands between the story and the plant, such as a bad line.
 */
export const tellStory = async (
  { homes, seed, lastDay }: Wish,
  through: (plant: Plant) => Plant = (plant) => plant,
): Promise<ToldPlant> => {
  const folder = mkdtempSync(join(tmpdir(), 'demonstration-'));
  const files = dataFolder(folder);
  const random = demonstrationRandom(seed);
  let nowMs = 0;
  const plant = await openPlantAt({
    at: { file: files.ledger },
    keys: files.keys,
    name: 'test',
    clock: () => nowMs,
    id: random.id,
    random: random.bytes,
  });
  const simulated = await simulate({
    plant: through(plant),
    files: demonstrationFiles(ROOT),
    seed,
    homes,
    lastDay,
    setClock: (atMs) => {
      nowMs = atMs;
    },
    progress: () => undefined,
  });
  return {
    plant,
    simulated,
    ledgerFile: files.ledger,
    events: () => eventsIn(files.ledger),
    clear: async () => {
      await plant.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
};

/** Of the story's ledger. */
export const rootOf = async ({ events }: ToldPlant): Promise<string> => {
  const all = await events();
  return ledgerRoot(leavesOf(all));
};

async function* leavesOf(events: readonly Envelope[]): AsyncGenerator<string> {
  for (const event of events) yield Promise.resolve(leafOf(canonicalJson(event)).toString('hex'));
}
