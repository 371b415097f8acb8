import type { LedgerHouse } from '../support/ledger-house';
import { crashSuite } from './crash.suite';
import { factsSuite } from './facts.suite';
import { failingSuite } from './failing.suite';
import { keysSuite } from './keys.suite';
import { modelSuite } from './model.suite';
import { readingSuite } from './reading.suite';
import { recordingSuite } from './recording.suite';
import { treeSuite } from './tree.suite';
import { writersSuite } from './writers.suite';

type Engine = {
  readonly name: string;
  readonly newHouse: () => Promise<LedgerHouse>;
  /** How many random days of work to try. */
  readonly runs: number;
};

/** What a ledger does on any engine. Each engine calls it in one line. */
export const ledgerSuite = ({ name, newHouse, runs }: Engine): void => {
  describe(`a ledger on ${name}`, () => {
    let house: LedgerHouse;
    beforeEach(async () => {
      house = await newHouse();
    });
    afterEach(() => house.clear());

    recordingSuite(() => house);
    keysSuite(() => house);
    factsSuite(() => house);
    failingSuite(() => house);
    writersSuite(() => house);
    crashSuite(() => house);
    readingSuite(() => house);
    treeSuite(() => house);
    modelSuite(newHouse, runs);
  });
};
