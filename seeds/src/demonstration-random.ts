import { chanceFrom } from './random';

/** What must not be left to chance if the same seed is to give the same ledger: its id, its keys, its nonces. */
export type DemonstrationRandom = {
  readonly id: string;
  readonly bytes: (length: number) => Buffer;
};

export const demonstrationRandom = (seed: string): DemonstrationRandom => {
  const chance = chanceFrom(`studbook demonstration ${seed} keys`);
  const id = `${chance.hex(8)}-${chance.hex(4)}-4${chance.hex(3)}-8${chance.hex(3)}-${chance.hex(12)}`;
  return { id, bytes: (length) => Buffer.from(chance.bytes(length)) };
};
