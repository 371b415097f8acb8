import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
} from 'node:fs';
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
  assertEmpty(folder);
  if (postgres() !== undefined) throw new Usable(ONLY_IN_A_FOLDER);
  const making = `${folder}.making`;
  rmSync(making, { recursive: true, force: true });
  mkdirSync(making, { recursive: true });
  try {
    const made = await fill(making, wish);
    ontoDisk(making);
    if (existsSync(folder))
      for (const name of readdirSync(making)) renameSync(join(making, name), join(folder, name));
    else renameSync(making, folder);
    return { ...made, folder };
  } finally {
    rmSync(making, { recursive: true, force: true });
  }
};

/** Files and the folder that names them: what is moved into place next is there after a power cut too. */
const ontoDisk = (folder: string): void => {
  const paths = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name));
  for (const path of [...paths, folder]) {
    const handle = openSync(path, 'r');
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  }
};

const ONLY_IN_A_FOLDER =
  'The demonstration plant is made in a folder, on SQLite. Leave DATABASE_URL out for this command.';

const assertEmpty = (folder: string): void => {
  const there = Object.values(dataFolder(folder)).filter((path) => existsSync(path));
  if (there.length === 0) return;
  throw new Usable(
    `${folder} holds a plant already (${there.join(', ')}), and is left as it is. ` +
      'Give the demonstration a folder of its own with --data.',
  );
};

const fill = async (making: string, wish: DemonstrationWish): Promise<Omit<Made, 'folder'>> => {
  const simulated = await tellStory(making, wish);
  await withAccess(making, async (access) => {
    for (const { person, pin } of simulated.signIns) await access.addPerson(person, pin, true);
  });
  return {
    homes: wish.homes,
    sections: simulated.sections,
    days: simulated.days,
    events: simulated.events,
    root: await ledgerRoot(leavesIn(dataFolder(making).ledger)),
    rejected: Object.fromEntries(simulated.rejected),
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
