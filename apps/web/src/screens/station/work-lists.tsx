import type { ReactNode } from 'react';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';
import type { Card, SectionFacts } from './cards';
import { WorkRow } from './work-row';

type ListProps = { readonly id: WordKey; readonly cards: readonly Card[] };
const Rows = ({ id, cards }: ListProps): ReactNode => {
  const { t } = useSpeech();
  if (cards.length === 0) return null;
  return (
    <section className="stack tight" aria-labelledby={id}>
      <h2 id={id}>{t(id, { count: cards.length })}</h2>
      <ul className="works">
        {cards.map((card) => (
          <WorkRow key={card.operation} card={card} />
        ))}
      </ul>
    </section>
  );
};

/** What is open here in working order, then what came along from earlier stations, then what is proven. */
export const WorkLists = ({ section }: { readonly section: SectionFacts }): ReactNode => {
  const { t } = useSpeech();
  const { operations, carried } = section;
  const isDone = ({ mark }: Card): boolean => mark === 'proven' || mark === 'covered';
  const open = operations.filter((card) => !isDone(card));
  return (
    <>
      {operations.length === 0 && <p className="notice">{t('list.nothing-planned')}</p>}
      {operations.length > 0 && open.length === 0 && <p className="notice proven">{t('list.all-done')}</p>}
      <Rows id="list.due" cards={open} />
      <Rows id="list.carried" cards={carried} />
      <Rows id="list.done" cards={operations.filter(isDone)} />
    </>
  );
};
