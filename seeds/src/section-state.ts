import type { Card } from './measured';
import type { HomeOrder } from './models';
import type { Chance } from './random';
import type { Said, Telling } from './telling';
import type { Fault } from './story';
import type { OtherHalf, World } from './world';

/** A defect the floor knows of and has not seen mended. */
export type KnownDefect = {
  readonly defect: string;
  readonly operation: string | null;
  reworkedBy: string | null;
};
/** The record, not the work, is short of something: who signed, a value, an entry that others need. */
export type RecordHold = {
  readonly hold: string;
  readonly operation: string | null;
  readonly reason: string;
};
/** A fault that is there and nobody has noticed yet. */
export type Hidden = { readonly fault: Fault; readonly place: string | null };

/** What the people around one section have in their heads: it grows as the section goes down the line. */
export type Section = {
  readonly world: World;
  readonly chance: Chance;
  readonly home: HomeOrder;
  readonly serial: string;
  readonly wet: boolean;
  readonly cards: ReadonlyMap<string, Card>;
  readonly done: Set<string>;
  /** Done on the floor, its sign-off not sent yet. */
  readonly unsent: Telling[];
  readonly defects: KnownDefect[];
  /** As the last answer had them. */
  recordHolds: readonly RecordHold[];
  readonly hidden: Hidden[];
  readonly shortages: string[];
  /** Work whose record a visitor finds missing: nobody in the story makes it good. */
  readonly leftOpen: ReadonlySet<string>;
  /** Inspectors who signed for work of a crew: they do not look at it a second time. */
  readonly vouched: Set<string>;
  /** What the inspection agency does here is drawn apart: without it the story would be the same. */
  readonly agency: Chance;
  /** The station at which it looks; null: not at this section. */
  readonly seenAt: string | null;
  readonly redTags: string[];
  /** The station it stands at. */
  at: string;
  now: number;
};

/** Work of a station still ahead is nobody's to make good, whatever a wrong scan says. */
export const isReached = ({ world, at }: Section, card: Card): boolean =>
  world.stations.indexOf(card.station) <= world.stations.indexOf(at);

/** Not the quality manager's to decide: the agency's tag, and what waits for somebody to look. */
const OF_OTHERS: ReadonlySet<string> = new Set(['red-tag', 'contained']);

/** Defects a telling opened, its holds among them, are from now on known. */
export const learn = (section: Section, said: readonly Said[]): void => {
  for (const one of said) {
    if (!one.ok) continue;
    if (one.answer.holds !== undefined)
      section.recordHolds = one.answer.holds.filter(
        ({ defect, reason }) => defect === null && !OF_OTHERS.has(reason),
      );
    for (const hold of one.answer.holds ?? []) {
      const { defect } = hold;
      if (defect === null || section.defects.some((known) => known.defect === defect)) continue;
      section.defects.push({ defect, operation: hold.operation, reworkedBy: null });
    }
  }
};

/** A mistaken entry may land on work this section has not had yet; once withdrawn, all it had opened is forgotten. */
export const asOtherHalf = (section: Section): OtherHalf => ({
  mayTakeUp: (operation) => section.cards.has(operation) && !section.done.has(operation),
  hasDone: (operation) => section.done.has(operation),
  forget: (operation) => {
    section.recordHolds = section.recordHolds.filter((hold) => hold.operation !== operation);
    const still = section.defects.filter((known) => known.operation !== operation);
    section.defects.splice(0, section.defects.length, ...still);
  },
});
