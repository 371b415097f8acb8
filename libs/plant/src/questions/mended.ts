import type { AnswerOf } from '@libs/contracts';
import { floorDay } from '@libs/kernel';
import type { Asked } from './asked';
import { defectCard } from './defect-card';
import type { Subject } from './subject';

type Mended = NonNullable<AnswerOf<'linkBook'>['mended']>;

const ALWAYS = { from: '0000-00-00', to: '9999-99-99' } as const;
/** No home that may be shipped has more. */
const DEFECTS_OF_HOME = 500;

/** What differed from the design while it was built, and was put right, in plain words. */
export const mendedIn = async ({ home, sections }: Subject, { views, names }: Asked): Promise<Mended> => {
  const called = names.ofRevision(home.revision);
  const mended: Mended = [];
  for (const { serial } of [...sections, home]) {
    const rows = await views.defects({ serial, class: 'nonconformance' }, ALWAYS, DEFECTS_OF_HOME);
    for (const row of rows) {
      if (row.state !== 'closed') continue;
      mended.push({ says: defectCard(row, called).says, on: floorDay(row.occurredAt) });
    }
  }
  return mended.sort((one, other) => (one.on < other.on ? -1 : 1));
};
