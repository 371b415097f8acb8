import { createContext, useContext } from 'react';
import type { AnswerOf } from '@libs/contracts';
import type { Card, SectionFacts, Station } from './cards';
import type { Panel, Undo } from './panel';

/** What every form on this screen needs: the section, the station it is held at, and where to go next. */
export type Work = {
  readonly section: SectionFacts;
  readonly station: Station;
  readonly show: (panel: Panel) => void;
  readonly close: () => void;
  readonly mayI: (card: Card) => void;
  readonly asking: boolean;
  /** After a telling: shows what came back and renews the section. */
  readonly told: (result: AnswerOf<'work'> | 'kept' | 'turned-down', says: string, more?: More) => void;
};
export type More = {
  readonly card?: Card | null;
  readonly then?: Card | null;
  readonly undo?: Undo;
  /** It was told to release a hold: that one went is no news. */
  readonly releases?: true;
};

export const WorkContext = createContext<Work | null>(null);

export const useWork = (): Work => {
  const work = useContext(WorkContext);
  if (work === null) throw new Error('useWork is used outside a section');
  return work;
};
