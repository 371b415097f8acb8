import type { AnswerOf } from '@libs/contracts';
import type { CloudEvent, DeadLetter, Subscription } from '@libs/plant';

type Listed = AnswerOf<'feed'>['subscriptions'][number];
type Letter = AnswerOf<'feed'>['letters'][number];

const instant = (ms: number): string => new Date(ms).toISOString();

const standingOf = ({ state, failures }: Subscription, behind: number): Listed['standing'] => {
  if (state === 'gone') return 'gone';
  if (failures > 0) return 'failing';
  return behind > 0 ? 'behind' : 'up-to-date';
};

export const subscriptionAnswer = (
  one: Subscription,
  head: number,
  names: ReadonlyMap<string, string>,
): Listed => {
  const behind = Math.max(0, head - one.position);
  return {
    id: one.id,
    kind: one.kind,
    target: one.target,
    wants: { ...one.wants, events: one.wants.events === 'all' ? 'all' : [...one.wants.events] },
    by: names.get(one.madeBy) ?? one.madeBy,
    madeAt: instant(one.madeAt),
    standing: standingOf(one, behind),
    behind,
    deliveredAt: one.deliveredAt === null ? null : instant(one.deliveredAt),
    nextAt: one.failures > 0 && one.state === 'on' ? instant(one.nextAt) : null,
    trouble: one.trouble,
  };
};

/** Written by the feed itself. */
const eventIn = ({ body }: DeadLetter): CloudEvent => JSON.parse(body) as CloudEvent;

export const letterAnswer = (letter: DeadLetter, targets: ReadonlyMap<string, string>): Letter => {
  const { id, subscription, type, subject, why, tries, at } = letter;
  return {
    id,
    subscription,
    target: targets.get(subscription) ?? '',
    type,
    subject,
    says: saysOf(eventIn(letter)) ?? { en: type, es: type },
    why,
    tries,
    at: instant(at),
  };
};

const saysOf = ({ data }: CloudEvent): Letter['says'] | null => {
  const says = data['says'];
  if (typeof says !== 'object' || says === null || !('en' in says) || !('es' in says)) return null;
  const { en, es } = says;
  return typeof en === 'string' && typeof es === 'string' ? { en, es } : null;
};
