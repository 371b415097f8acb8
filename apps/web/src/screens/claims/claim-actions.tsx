import { useState } from 'react';
import type { ReactNode } from 'react';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';
import { AsFoundForm } from './as-found-form';
import type { Claim } from './claim';
import { DecideForm } from './decide-form';
import { DeliveryForm } from './delivery-form';
import { DismissForm, OpenForm } from './triage-forms';

type Source = { readonly id: string; readonly name: { readonly en: string; readonly es: string } };
type Props = {
  readonly claim: Claim;
  /** What an as-found report may point to. */
  readonly sources: readonly Source[];
  readonly claims: readonly Claim[];
  readonly again: () => void;
};
type Action = 'dismiss' | 'open' | 'as-found' | 'delivery' | 'decide';
const WORDS: Readonly<Record<Action, WordKey>> = {
  dismiss: 'complaint.no-failure',
  open: 'complaint.claim',
  'as-found': 'claims.tell-found',
  delivery: 'claims.tell-delivery',
  decide: 'claims.decide',
};
const OF: Readonly<Record<Claim['standing'], readonly Action[]>> = {
  new: ['dismiss', 'open'],
  'no-failure': [],
  claim: ['as-found', 'delivery', 'decide'],
};

/** What can be told of it now; one form at a time. */
export const ClaimActions = ({ claim, sources, claims, again }: Props): ReactNode => {
  const { t } = useSpeech();
  const [open, setOpen] = useState<Action | null>(null);
  const done = (): void => {
    setOpen(null);
    again();
  };
  const form: { readonly [action in Action]: () => ReactNode } = {
    dismiss: () => <DismissForm claim={claim} done={done} />,
    open: () => <OpenForm claim={claim} done={done} />,
    'as-found': () => <AsFoundForm claim={claim} sources={sources} done={done} />,
    delivery: () => <DeliveryForm claim={claim} claims={claims} done={done} />,
    decide: () => <DecideForm claim={claim} done={done} />,
  };
  return (
    <div className="stack tight no-print">
      <div className="choices">
        {OF[claim.standing].map((action) => (
          <button
            key={action}
            type="button"
            className="button"
            aria-expanded={open === action}
            onClick={() => setOpen(open === action ? null : action)}
          >
            {t(WORDS[action])}
          </button>
        ))}
      </div>
      {open !== null && form[open]()}
    </div>
  );
};
