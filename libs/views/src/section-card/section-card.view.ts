import { floorDay } from '@libs/kernel';
import { serialOf } from '../unit-event';
import type { View } from '../view';
import { nextCard, storedCard } from './apply';
import { blankCard } from './section-card';
import type { SectionCard } from './section-card';

/** One card a section and a home: what lists show, one row each, whatever the length of its history. */
export const sectionCard: View<SectionCard> = {
  name: 'section-card',
  version: 4,
  keysOf: (event) => [event.stream],
  apply: (card, event, key) => nextCard(card ?? blankCard(key, serialOf(key)), event),
  stored: storedCard,
  rowTables: {
    section_card: {
      columns: {
        kind: 'text',
        serial: 'text',
        home: 'text',
        stage: 'text',
        sought: 'text',
        label_day: 'text',
        held: 'whole',
      },
      indexes: [['kind', 'stage'], ['home'], ['label_day'], ['held']],
    },
  },
  rows: (card, key) => [
    {
      table: 'section_card',
      key,
      cells: {
        kind: card.kind,
        serial: card.serial,
        home: card.home,
        stage: card.stage,
        sought: soughtBy(card),
        label_day: card.labelledAt === null ? null : floorDay(card.labelledAt),
        held: card.holds.length,
      },
    },
  ],
  counterTables: {},
  counts: () => [],
};

/** What a search for a home looks through. A label number is found with and without its spaces. */
const soughtBy = ({ serial, home, model, label }: SectionCard): string =>
  [serial, home, model, label, label?.replaceAll(' ', '')]
    .filter((word) => word !== undefined && word !== null)
    .join(' ')
    .toLowerCase();
