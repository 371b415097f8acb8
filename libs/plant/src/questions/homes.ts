import type { AnswerOf } from '@libs/contracts';
import { epochMs } from '@libs/kernel';
import type { SectionCard } from '@libs/views';
import type { Asked } from './asked';

type Home = AnswerOf<'homes'>['homes'][number];

/** As many as a screen shows at first; whoever wants more says how many. */
const HOMES_SHOWN = 50;

/** Homes with this in a serial, a model or a label number; those that something happened to last come first. */
export const homesQuestion =
  ({ views }: Asked) =>
  async (search: string, most: number = HOMES_SHOWN): Promise<AnswerOf<'homes'>> => {
    const byHome = new Map<string, SectionCard[]>();
    for (const card of await views.homesLike(search, most)) {
      byHome.set(card.home, [...(byHome.get(card.home) ?? []), card]);
    }
    const homes = [...byHome].map(([home, cards]) => homeOf(home, cards));
    return {
      homes: homes.sort((a, b) => epochMs(b.lastAt) - epochMs(a.lastAt)),
      total: await views.homesLikeCount(search),
    };
  };

const homeOf = (home: string, cards: readonly SectionCard[]): Home => {
  const own = cards.find(({ kind }) => kind === 'home');
  const sections = cards.filter(({ kind }) => kind === 'section');
  return {
    home,
    model: own?.model ?? sections[0]?.model ?? '',
    sections: [...(own?.sections ?? sections.map(({ serial }) => serial))],
    stage: stageOf(sections, own),
    lastAt: cards.map(({ last }) => last.occurredAt).reduce(later),
    holds: cards.reduce((sum, { holds }) => sum + holds.length, 0),
  };
};

/** A home has left when all of it has; it is on the line as soon as some of it is. */
const stageOf = (sections: readonly SectionCard[], own: SectionCard | undefined): SectionCard['stage'] => {
  const stages = new Set(sections.map(({ stage }) => stage));
  if (stages.size === 0) return own?.stage ?? 'ordered';
  const [only] = stages;
  if (stages.size === 1 && only !== undefined) return only;
  return stages.has('pulled') ? 'pulled' : 'on-line';
};

const later = (a: string, b: string): string => (epochMs(b) > epochMs(a) ? b : a);
