import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { places } from '../../router/places';
import { Link, goTo } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { TroubleNotice } from '../../ui/trouble';
import { named } from '../../words/named';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import { keepDraft, keptDraft } from '../rulebook/draft';
import type { Claim } from './claim';
import { withCheck } from './new-check';

const LATEST = {};

/** Where a confirmed cause goes from here: its station's escapes, the rulebook, the containment list. */
export const Confirmed = ({ claim }: { readonly claim: Claim }): ReactNode => {
  const { t, say } = useSpeech();
  const times = useTimes();
  const { plant } = useSignedIn();
  const { confirmed } = claim;
  if (confirmed === null) return null;
  const { operation } = confirmed;
  const station = plant.operations.find(({ id }) => id === operation)?.station;
  return (
    <section className="notice proven" aria-labelledby="confirmed">
      <div className="grow stack tight">
        <h2 id="confirmed">{t('confirmed.title', { cause: say(confirmed.says) })}</h2>
        <p>{t('confirmed.by', { by: confirmed.by, at: times.moment(confirmed.at) })}</p>
        <div className="row no-print">
          {station !== undefined && (
            <Link className="button" to={places.stationQuality(station)}>
              {t('confirmed.station', { station: say(named(plant.stations, station)) })}
            </Link>
          )}
          {operation !== null && <ProposeCheck claim={claim} operation={operation} />}
          <Link className="button" to={places.containment}>
            {t('nav.containment')}
          </Link>
        </div>
      </div>
    </section>
  );
};

/** A check more, written into the draft of the rulebook: nothing of it is in force before somebody else approves it. */
const ProposeCheck = ({
  claim,
  operation,
}: {
  readonly claim: Claim;
  readonly operation: string;
}): ReactNode => {
  const { t } = useSpeech();
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const propose = async (): Promise<void> => {
    const issued = await ask('rulebookFiles', LATEST);
    if (!issued.ok) {
      setTrouble(issued.trouble);
      return;
    }
    keepDraft(withCheck(keptDraft() ?? issued.answer.files, claim, operation));
    goTo(places.rulebookPart('change'));
  };
  return (
    <>
      <button type="button" className="button" onClick={() => void propose()}>
        {t('confirmed.propose')}
      </button>
      {trouble !== null && <TroubleNotice trouble={trouble} />}
    </>
  );
};
