import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { dataFolder } from '@libs/plant';
import {
  demonstrationFiles,
  demonstrationRandom,
  lastDayFor,
  ledgerRoot,
  simulate,
} from '../../../../seeds/src';
import type { Simulated } from '../../../../seeds/src';
import { Usable } from '../exit-code';
import { assertFree, moveIntoPlace } from './into-place';
import { leavesIn } from './leaves';
import { postgres, withAccess } from './open-plant';
import { tellMuch } from './tell-much';

export type DemonstrationWish = {
  readonly folder: string;
  readonly homes: number;
  readonly seed: string;
  /** Null: today. */
  readonly lastDay: string | null;
  readonly progress: (share: number, day: string) => void;
};

export type Made = {
  readonly folder: string;
  readonly homes: number;
  readonly sections: number;
  readonly days: number;
  readonly events: number;
  /** SHA-256 over all leaves: the same for the same seed, homes and last day. */
  readonly root: string;
  readonly rejected: { readonly [code: string]: number };
};

/** The project's own folder, where the demonstration rulebook lies. The build mirrors the sources under dist/. */
const projectFolder = (): string => {
  for (let folder = __dirname; folder !== resolve(folder, '..'); folder = resolve(folder, '..')) {
    if (existsSync(join(folder, 'seeds', 'rulebook', 'plant.yaml'))) return folder;
  }
  throw new Usable('The demonstration rulebook (seeds/rulebook) is not beside this program.');
};

/**
 * Made in a folder of its own and moved into place when it is whole: a demonstration that is cut short leaves nothing
 * that looks like a plant.
 */
export const makeDemonstration = async (wish: DemonstrationWish): Promise<Made> => {
  const folder = resolve(wish.folder);
  if (postgres() !== undefined) throw new Usable(ONLY_IN_A_FOLDER);
  await assertFree(folder);
  const making = `${folder}.making`;
  rmSync(making, { recursive: true, force: true });
  mkdirSync(making, { recursive: true });
  try {
    const { signIns, ...made } = await fill(making, wish);
    await withAccess(folder, async (access) => {
      for (const { person, pin } of signIns) await access.addPerson(person, pin, { shown: true });
    });
    moveIntoPlace(making, folder);
    return { folder, ...made };
  } finally {
    rmSync(making, { recursive: true, force: true });
  }
};

const ONLY_IN_A_FOLDER =
  'The demonstration plant is made in a folder, on SQLite. Leave DATABASE_URL out for this command.';

type Filled = Omit<Made, 'folder'> & Pick<Simulated, 'signIns'>;

const fill = async (making: string, wish: DemonstrationWish): Promise<Filled> => {
  const { sections, days, events, rejected, signIns } = await tellStory(making, wish);
  return {
    homes: wish.homes,
    sections,
    days,
    events,
    root: await ledgerRoot(leavesIn(dataFolder(making).ledger)),
    rejected: Object.fromEntries(rejected),
    signIns,
  };
};

const tellStory = async (
  making: string,
  wish: DemonstrationWish,
): Promise<Simulated & { events: number }> => {
  const files = demonstrationFiles(projectFolder());
  const random = demonstrationRandom(wish.seed);
  let nowMs = 0;
  const setClock = (atMs: number): void => {
    nowMs = atMs;
  };
  const place = { folder: making, inMaking: true, clock: () => nowMs, id: random.id, random: random.bytes };
  return tellMuch(
    place,
    async (plant) => {
      const simulated = await simulate({
        plant,
        files,
        seed: wish.seed,
        homes: wish.homes,
        lastDay: wish.lastDay ?? lastDayFor(files, Date.now()),
        setClock,
        progress: ({ share, day }) => wish.progress(share, day),
      });
      return { ...simulated, events: await plant.head() };
    },
    () => undefined,
  );
};
