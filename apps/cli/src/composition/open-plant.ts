import { existsSync, mkdirSync } from 'node:fs';
import { KeyReused } from '@libs/ledger';
import { dataFolder, openAccess, openPlantAt } from '@libs/plant';
import type { Access, Plant } from '@libs/plant';
import { Usable } from '../exit-code';

export const postgres = (): string | undefined => process.env['DATABASE_URL'] || undefined;

/** Where there is no plant, nothing is made by looking after one. */
export const assertPlant = (folder: string): void => {
  if (postgres() !== undefined || existsSync(dataFolder(folder).ledger)) return;
  throw new Usable(`${folder} holds no plant. Say where it lies with --data, or make one: studbook demo`);
};

/** Opens the plant for writing, as the server does. */
export const openPlantIn = async (folder: string): Promise<Plant> => {
  const files = dataFolder(folder);
  const url = postgres();
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  return openPlantAt({
    at: url === undefined ? { file: files.ledger } : { url },
    keys: files.keys,
    photos: files.photos,
    name: 'Studbook',
  });
};

/** Works on the plant as its writer, and lets go of it whatever comes. A running server is never pushed aside. */
export const writePlant = async <T>(folder: string, work: (plant: Plant) => Promise<T>): Promise<T> => {
  const plant = await openPlantIn(folder);
  try {
    return await work(plant);
  } finally {
    await plant.close();
  }
};

export const withAccess = async <T>(folder: string, work: (access: Access) => Promise<T>): Promise<T> => {
  const url = postgres();
  if (url === undefined) mkdirSync(folder, { recursive: true });
  const access = await openAccess(
    url === undefined ? { sqlite: dataFolder(folder).access } : { postgres: url },
  );
  try {
    return await work(access);
  } finally {
    await access.close();
  }
};

/** The same row, read by another mapping than the first time. */
export const isKeyReused = (error: unknown): boolean => error instanceof KeyReused;
