import type { Card } from './measured';

/** One thing done at a station: a sign-off of several operations, or an entry of its own. */
export type Phase =
  | { readonly is: 'sign-off'; readonly station: string; readonly cards: readonly Card[] }
  | { readonly is: 'entry'; readonly card: Card };

export const hidesForGood = (card: Card): boolean => card.hides.some(({ hidden }) => hidden !== 'lift');
/** A test of what many crews have done: whoever brings the instrument asks first whether all of it is there. */
const testsManyHands = (card: Card): boolean => card.entry === 'T' && card.waitsFor.length > 2;
/** Asked about before it is done: what hides others, what releases a section, what affixes the label. */
export const isAsked = (card: Card): boolean =>
  testsManyHands(card) || hidesForGood(card) || card.label || card.operation.startsWith('final');

const signedTogether = (card: Card): boolean => (card.entry === 'S' || card.entry === 'V') && !card.label;

/** Operations to do now, each after those it waits for; a test of a later station is done early where work waits for it. */
const inOrder = (
  due: readonly Card[],
  all: ReadonlyMap<string, Card>,
  done: ReadonlySet<string>,
): readonly Card[] => {
  const ordered: Card[] = [];
  const seen = new Set(done);
  const visit = (card: Card): void => {
    if (seen.has(card.operation)) return;
    seen.add(card.operation);
    for (const { operation } of card.waitsFor) {
      const awaited = all.get(operation);
      if (awaited !== undefined && (awaited.entry === 'T' || due.includes(awaited))) visit(awaited);
    }
    ordered.push(card);
  };
  for (const card of due) visit(card);
  return ordered;
};

/** A station's work in the order it is sent: one sign-off as far as it goes, broken by inspections, tests and covers. */
export const phasesOf = (
  due: readonly Card[],
  all: ReadonlyMap<string, Card>,
  done: ReadonlySet<string>,
): readonly Phase[] => {
  const phases: Phase[] = [];
  let together: Card[] = [];
  const flush = (): void => {
    const [first] = together;
    if (first !== undefined) phases.push({ is: 'sign-off', station: first.station, cards: together });
    together = [];
  };
  for (const card of inOrder(due, all, done)) {
    if (!signedTogether(card)) {
      flush();
      phases.push({ is: 'entry', card });
      continue;
    }
    if (isAsked(card) || together[0]?.station !== card.station) flush();
    together.push(card);
  }
  flush();
  return phases;
};
