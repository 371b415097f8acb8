import { hash } from 'node:crypto';
import { treeHashing } from '@libs/proof';

export const HASHING = treeHashing((bytes) => hash('sha256', bytes, 'buffer'));
