import { rootOf, tellStory } from '../support/demonstration-plant';
import type { Wish } from '../support/demonstration-plant';

jest.setTimeout(180_000);

const rootWith = async (wish: Wish): Promise<string> => {
  const told = await tellStory(wish);
  try {
    return await rootOf(told);
  } finally {
    await told.clear();
  }
};

const WISH: Wish = { homes: 14, seed: 'once', lastDay: '2026-03-06' };

describe('the demonstration plant', () => {
  it('comes out the same, leaf for leaf, for the same seed and last day, and only for those', async () => {
    const root = await rootWith(WISH);
    expect(await rootWith(WISH)).toBe(root);
    expect(await rootWith({ ...WISH, seed: 'twice' })).not.toBe(root);
    expect(await rootWith({ ...WISH, lastDay: '2026-03-05' })).not.toBe(root);
  });
});
