import { useState } from 'react';
import type { ReactNode } from 'react';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import { useBookDay } from './book-day';
import type { SiteCard, StepProps } from './site-card';
import { SiteForm } from './site-form';

const Stands = ({ card }: { readonly card: SiteCard }): ReactNode => {
  const { t, say } = useSpeech();
  const day = useBookDay();
  if (card.done !== null)
    return t('site-link.done-on', { on: day(card.done.at.slice(0, 'yyyy-mm-dd'.length)) });
  return card.waitsFor.length === 0
    ? t('site-link.due')
    : t('site-link.waits', { list: card.waitsFor.map(({ name }) => say(name)).join(', ') });
};

/** One step: how it stands, and the form to record it. */
export const SiteStep = (props: StepProps): ReactNode => {
  const { t, say } = useSpeech();
  const { card, again } = props;
  const [open, setOpen] = useState(false);
  const [remarks, setRemarks] = useState<number | null>(null);
  const told = (findings: number): void => {
    setOpen(false);
    setRemarks(findings);
    again();
  };
  return (
    <li className="site-step stack tight">
      <div className="row">
        <Mark name={card.done === null ? 'due' : 'proven'} size={28} />
        <div className="grow">
          <h2>{say(card.name)}</h2>
          <p className="quiet small">
            <Stands card={card} />
          </p>
        </div>
        <button type="button" className="button" aria-expanded={open} onClick={() => setOpen(!open)}>
          {t(open ? 'site-link.close' : card.done === null ? 'site-link.record' : 'site-link.again')}
        </button>
      </div>
      {remarks !== null && (
        <p className={remarks === 0 ? 'notice proven' : 'notice due'} role="status">
          {remarks === 0 ? t('site-link.told') : t('site-link.told-findings', { count: remarks })}
        </p>
      )}
      {open && <SiteForm {...props} told={told} />}
    </li>
  );
};
