import { useState } from 'react';
import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import type { Shared } from '../containment/shared-words';
import type { Candidate, Claim, Exposure } from './claim';

type Props = { readonly claim: Claim; readonly cause: Candidate; readonly exposure: Exposure };

/** By what a containment's list says the sections are alike. */
const SHARED_BY: Readonly<Record<string, Shared>> = {
  crew: 'crew',
  shift: 'shift',
  lot: 'lot',
  maker: 'lot',
  instrument: 'instrument',
  design: 'design',
};

/**
 * All that are still in the plant or its yard, held in one commit and put on the containment list. Causes outside the
 * line have no operation to look at again: there is nothing to hold by.
 */
export const HoldThem = ({ claim, cause, exposure }: Props): ReactNode => {
  const { t } = useSpeech();
  const [held, setHeld] = useState(false);
  const telling = useTell(() => setHeld(true));
  const { operation } = exposure;
  const here = exposure.homes.filter(({ where }) => where !== 'sold');
  const by = SHARED_BY[cause.cause.factor] ?? 'span';
  const sections = here.flatMap((home) => home.sections.map((serial) => ({ serial, shares: [by] })));
  if (held)
    return (
      <p className="notice proven" role="status">
        <Link to={places.containment}>{t('expose.held', { count: sections.length })}</Link>
      </p>
    );
  if (operation === null || sections.length === 0) return null;
  const serial = claim.section ?? claim.home ?? '';
  const body = { serial, claim: claim.claim, operation, by: [by], sections, hold: true };
  return (
    <>
      <button
        type="button"
        className="button"
        disabled={telling.busy}
        onClick={() => void telling.send('containment', body)}
      >
        {t('expose.hold', { count: sections.length })}
      </button>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
    </>
  );
};
