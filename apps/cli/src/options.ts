import { resolve } from 'node:path';
import { Option } from 'commander';

/** The plant's data folder: the server's own setting, so that both find the same plant. */
export const dataOption = (): Option =>
  new Option('--data <folder>', "the plant's data folder").env('STUDBOOK_DATA').default('./data');

export const jsonOption = (): Option => new Option('--json', 'print JSON instead of words').default(false);

export type DataOptions = { readonly data: string; readonly json: boolean };

export const folderOf = ({ data }: Pick<DataOptions, 'data'>): string => resolve(data);
