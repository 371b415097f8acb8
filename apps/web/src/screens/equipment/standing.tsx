import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';

type Is = AnswerOf<'equipment'>['lots'][number]['standing'];
type Of = 'lot' | 'instrument' | 'qualification';

const MARKS = { good: 'proven', soon: 'due', over: 'held', bad: 'held' } as const;
const WORDS: Readonly<Record<Of, Readonly<Record<Is, WordKey>>>> = {
  lot: {
    good: 'equipment.good',
    soon: 'equipment.soon',
    over: 'equipment.past-day',
    bad: 'equipment.quarantined',
  },
  instrument: {
    good: 'equipment.good',
    soon: 'equipment.due-soon',
    over: 'equipment.overdue',
    bad: 'equipment.out',
  },
  qualification: {
    good: 'equipment.good',
    soon: 'equipment.soon',
    over: 'equipment.run-out',
    bad: 'equipment.run-out',
  },
};

/** A mark and a word: never a colour alone. */
export const Standing = ({ is, of }: { readonly is: Is; readonly of: Of }): ReactNode => {
  const { t } = useSpeech();
  return (
    <span>
      <Mark name={MARKS[is]} size={20} /> {t(WORDS[of][is])}
    </span>
  );
};
