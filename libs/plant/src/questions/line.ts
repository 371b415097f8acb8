import { eventSays, holdSays } from '@libs/contracts';
import type { AnswerOf, EventData } from '@libs/contracts';
import type { FindingClass } from '@libs/judge';
import type { SectionCard } from '@libs/views';
import type { Names } from '../names';
import type { Asked } from './asked';

type LineSection = AnswerOf<'line'>['sections'][number];

const ON_THE_LINE = ['on-line', 'pulled'];

/** Every section at one of these stages, along the line; those longest at a station first. */
export const lineQuestion =
  ({ ledger, views, plans, names }: Asked) =>
  async (stages: readonly string[]): Promise<AnswerOf<'line'>> => {
    const position = await ledger.head();
    const cards = await views.cards(stages.length === 0 ? ON_THE_LINE : stages);
    const order = new Map(
      (plans.current()?.rulebook.stations ?? []).map(({ id, pos }) => [id, pos ?? Infinity]),
    );
    const along = (card: SectionCard): number => order.get(card.station ?? '') ?? Infinity;
    return {
      position,
      sections: [...cards]
        .sort((a, b) => inOrder(along(a), along(b)) || inOrder(a.since ?? '', b.since ?? ''))
        .map((card) => lineSection(card, names.ofRevision(card.revision))),
    };
  };

const inOrder = <T extends string | number>(a: T, b: T): number => (a < b ? -1 : a > b ? 1 : 0);

const lineSection = (card: SectionCard, names: Names): LineSection => {
  const [first] = card.holds;
  return {
    serial: card.serial,
    home: card.home,
    model: card.model,
    role: card.role,
    stage: card.stage,
    station: card.station,
    since: card.since,
    pulledFor: card.pulledFor === null ? null : names.reason(card.pulledFor),
    holds: card.holds.length,
    heldBy: first === undefined ? null : holdSays(first, names),
    openWork: card.open.length,
    defects: {
      nonconformance: open(card, 'nonconformance'),
      punch: open(card, 'punch'),
      shortage: open(card, 'shortage'),
      record: open(card, 'record'),
    },
    label: card.label,
    lastSays: eventSays(card.last.type, saidIn(card), names),
    lastAt: card.last.occurredAt,
  };
};

/** The view's own text is not validated again. */
const saidIn = ({ last }: SectionCard): EventData =>
  typeof last.data === 'string' ? (JSON.parse(last.data) as EventData) : last.data;

const open = ({ defects }: SectionCard, kind: FindingClass): number =>
  Object.values(defects).filter((each) => each === kind).length;
