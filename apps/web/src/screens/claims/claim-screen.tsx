import type { ReactNode } from 'react';
import { useLive } from '../../api/live';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { useSoon } from '../../ui/soon';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { STANDINGS, mayDetermine, sourceWord } from './claim';
import type { Claim } from './claim';
import { ClaimActions } from './claim-actions';
import { ClaimFacts } from './claim-facts';
import { Confirmed } from './confirmed';
import { useDay } from './days';
import { DueSays } from './standing';
import { TraceSection } from './trace-section';
import '../release/release.css';
import './claims.css';

const EVERYTHING = {};

/** One claim: what is known, what may have caused it, which homes share that, and what is decided. */
export const ClaimScreen = ({ claim: id }: { readonly claim: string }): ReactNode => {
  const { answer, trouble, again } = useQuestion('claim', { claim: id });
  const everything = useQuestion('claims', EVERYTHING);
  const soon = useSoon(again);
  useLive(soon);
  const sources = everything.answer?.sources ?? [];
  return (
    <main className="page stack" id="main" aria-busy={answer === null}>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {answer !== null && (
        <>
          <Head claim={answer} />
          <ClaimFacts claim={answer} />
          <Acts claim={answer} sources={sources} claims={everything.answer?.claims ?? []} again={again} />
          {answer.confirmed !== null && <Confirmed claim={answer} />}
          {answer.standing === 'claim' && <TraceSection claim={answer} again={again} />}
        </>
      )}
    </main>
  );
};

const Acts = (props: Parameters<typeof ClaimActions>[0]): ReactNode => {
  const { me } = useSignedIn();
  return mayDetermine(me) ? <ClaimActions {...props} /> : null;
};

const Head = ({ claim }: { readonly claim: Claim }): ReactNode => {
  const { t, say } = useSpeech();
  const day = useDay();
  const where = claim.section ?? claim.home;
  return (
    <div className="page-head">
      <div>
        <h1>
          {say(claim.says)}
          {where !== null && ` · ${where}`}
        </h1>
        <p>
          <span className="mono">{claim.claim}</span> · {t(STANDINGS[claim.standing])} ·{' '}
          {t('claims.came', { day: day(claim.receivedOn), from: t(sourceWord(claim.source)) })}
        </p>
        <p>
          <DueSays due={claim.due} />
        </p>
        {claim.determinations.map((file) => (
          <p key={file}>
            <Link to={places.determination(file)}>{t('claims.to-file')}</Link>
          </p>
        ))}
      </div>
      <Link className="button no-print" to={places.claims}>
        {t('nav.claims')}
      </Link>
    </div>
  );
};
