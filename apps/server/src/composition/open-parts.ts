import { mkdirSync } from 'node:fs';
import type { Access, Plant } from '@libs/plant';
import { dataFolder, openAccess, openPlantAt } from '@libs/plant';
import type { Settings } from './settings';

export type OpenParts = {
  readonly plant: Plant;
  readonly access: Access;
  readonly engine: 'sqlite' | 'postgres';
  readonly close: () => Promise<void>;
};

/** The plant and who may sign in to it, over the database the settings name. */
export const openParts = async ({ data, databaseUrl }: Settings): Promise<OpenParts> => {
  const files = dataFolder(data);
  mkdirSync(data, { recursive: true, mode: 0o700 });

  const plant = await openPlantAt({
    at: databaseUrl === null ? { file: files.ledger } : { url: databaseUrl },
    keys: files.keys,
    name: 'Studbook',
  });
  try {
    const access = await openAccess(
      databaseUrl === null ? { sqlite: files.access } : { postgres: databaseUrl },
    );
    return {
      plant,
      access,
      engine: databaseUrl === null ? 'sqlite' : 'postgres',
      close: async () => {
        await plant.close();
        await access.close();
      },
    };
  } catch (fault) {
    await plant.close();
    throw fault;
  }
};
