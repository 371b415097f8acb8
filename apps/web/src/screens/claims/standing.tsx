import type { ReactNode } from 'react';
import { Mark } from '../../ui/mark';
import type { MarkName } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';
import { useDay } from './days';

export type DueStanding = 'done' | 'late-done' | 'running' | 'soon' | 'over';

export const DUE_MARKS: Readonly<Record<DueStanding, MarkName>> = {
  done: 'proven',
  'late-done': 'corrected',
  running: 'waiting',
  soon: 'due',
  over: 'refused',
};
const DUE_WORDS: Readonly<Record<DueStanding, WordKey>> = {
  done: 'due.done',
  'late-done': 'due.late-done',
  running: 'due.running',
  soon: 'due.soon',
  over: 'due.over',
};

type Due = { readonly day: string; readonly doneOn: string | null; readonly standing: DueStanding };

/** How a day that is due stands, in words: by shape first. */
export const DueSays = ({ due }: { readonly due: Due }): ReactNode => (
  <>
    <Mark name={DUE_MARKS[due.standing]} size={20} /> <DueWords due={due} />
  </>
);

/** For where the shape stands already. */
export const DueWords = ({ due }: { readonly due: Due }): ReactNode => {
  const { t } = useSpeech();
  const day = useDay();
  return t(DUE_WORDS[due.standing], { day: day(due.day), done: day(due.doneOn ?? due.day) });
};
