import type { ReactNode } from 'react';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { Book } from './book';

/** Every revision there was, who drafted and approved it, and the agency's approval of it. */
export const Issued = ({ book }: { readonly book: Book }): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  return (
    <section className="stack tight" aria-labelledby="issued">
      <h2 id="issued">{t('book.issued')}</h2>
      <ul className="stack tight">
        {book.issued.map((one) => (
          <li key={one.revision}>
            <strong>{t('plan.revision', { revision: one.revision })}</strong>,{' '}
            {t('book.effective', { at: times.moment(one.effectiveFrom) })}
            {one.inForce && ` · ${t('book.in-force')}`}
            {one.approvedBy !== null &&
              ` · ${t('book.by', { drafted: one.draftedBy ?? '–', approved: one.approvedBy })}`}
            {one.agency !== null &&
              ` · ${t('book.agency', { reference: one.agency.reference, day: one.agency.approvedOn })}`}
          </li>
        ))}
      </ul>
    </section>
  );
};
