import { readLedger } from '@libs/ledger/typeorm';
import { openKeyStore, sealingWith } from '@libs/ledger';
import { dataFolder, openPlant, photoStore, provingWith } from '@libs/plant';
import type { Plant } from '@libs/plant';
import { viewReader } from '@libs/views/typeorm';
import { makeDemonstration } from '../../../apps/cli/src/composition/make-demonstration';
import type { Row } from '../bench';
import { spentMs } from '../big-rulebook';
import { scratch } from '../scratch';

/** Entries a second: a year of a plant that records a million is through in half a minute. */
const GOAL = 50_000;
/** Some 9 500 entries, 4 000 of them of work: more homes make it longer, not faster. */
const HOMES = 40;
/** A run takes a tenth of a second: several, so that one pause of the machine is not the figure. */
const RUNS = 4;

const retroCheck = async (plant: Plant): Promise<number> => {
  const lines = await plant.rulebook.retroCheck({ revision: null }, { from: null, to: null });
  if (lines === undefined) throw new Error('The demonstration plant has no rulebook');
  for await (const line of lines) if (line.is === 'done') return line.entries;
  throw new Error('The retro-check ended early');
};

/** The demonstration's entries, read from its file and those of work judged again, in time of the processor. */
export const retroCheckRow: Row = {
  name: 'retro-check',
  unit: 'entries/s',
  better: 'more',
  peerName: 'the goal',
  goal: 1,
  prepare: async () => {
    const files = scratch();
    const folder = `${files.file()}-plant`;
    await makeDemonstration({
      folder,
      homes: HOMES,
      seed: 'bench',
      lastDay: '2026-11-20',
      progress: () => undefined,
    });
    const at = dataFolder(folder);
    const ledger = await readLedger({ file: at.ledger });
    const plant = await openPlant({
      ledger,
      reader: ledger.reader,
      views: viewReader(ledger.reader),
      sealing: sealingWith(openKeyStore(at.keys), ledger.id),
      proving: provingWith(ledger, at.keys),
      photos: photoStore(at.photos),
      clock: Date.now,
      rebuild: () => Promise.reject(new Error('Opened for reading only')),
    });
    return {
      ours: async () => {
        const began = spentMs();
        let gone = 0;
        for (let run = 0; run < RUNS; run += 1) gone += await retroCheck(plant);
        return (gone * 1_000) / (spentMs() - began);
      },
      peer: () => Promise.resolve(GOAL),
      close: async () => {
        await ledger.close();
        await files.clear();
      },
    };
  },
};
