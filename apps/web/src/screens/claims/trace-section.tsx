import { useState } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { CandidateEntry } from './candidate-entry';
import type { Candidate, Claim, Trace } from './claim';
import { ExposureSection } from './exposure-section';

type Props = { readonly claim: Claim; readonly again: () => void };

/** Most people need the first few; the others are there. */
const SHOWN = 6;

/** What may have caused it, ranked: the answer in a sentence, then why, then what can be done. */
export const TraceSection = ({ claim, again }: Props): ReactNode => {
  const { t } = useSpeech();
  // What was told of the claim since changes the trace: the question is another one then.
  const told = JSON.stringify([claim.asFound, claim.delivery, claim.confirmed?.at]);
  return <Traced key={told} claim={claim} again={again} title={t('trace.title')} />;
};

const Traced = ({ claim, again, title }: Props & { readonly title: string }): ReactNode => {
  const { t, say } = useSpeech();
  const { answer, trouble, again: askAgain } = useQuestion('trace', { claim: claim.claim });
  const [chosen, setChosen] = useState<string | null>(null);
  const [all, setAll] = useState(false);
  if (trouble !== null) return <TroubleNotice trouble={trouble} again={askAgain} />;
  if (answer === null) return <p role="status">{t('trace.looking')}</p>;
  const cause = answer.candidates.find(({ key }) => key === chosen);
  return (
    <>
      <section className="stack" aria-labelledby="trace">
        <h2 id="trace">{title}</h2>
        <TraceSays trace={answer} />
        {answer.next !== null && (
          <p className="notice due">
            <span>
              <strong>{t('trace.next')}</strong> {say(answer.next.says)}
            </span>
          </p>
        )}
        <div>
          {answer.candidates.slice(0, all ? undefined : SHOWN).map((candidate, at) => (
            <CandidateEntry
              key={candidate.key}
              candidate={candidate}
              trace={answer}
              claim={claim}
              open={at === 0}
              again={again}
              expose={() => setChosen(candidate.key)}
            />
          ))}
        </div>
        {!all && answer.candidates.length > SHOWN && (
          <div>
            <button type="button" className="button no-print" onClick={() => setAll(true)}>
              {t('trace.more', { count: answer.candidates.length - SHOWN })}
            </button>
          </div>
        )}
      </section>
      {cause !== undefined && <ExposureSection key={cause.key} claim={claim} cause={cause} />}
    </>
  );
};

const percent = (share: number): number => Math.round(share * 100);

const TraceSays = ({ trace }: { readonly trace: Trace }): ReactNode => {
  const { t, say } = useSpeech();
  const first: Candidate | undefined = trace.candidates[0];
  const tied = first === undefined ? 0 : first.tiedWith.length;
  return (
    <div className="stack tight">
      <p>
        <strong>{say(trace.verdictSays)}.</strong>{' '}
        {first !== undefined &&
          trace.verdict === 'common-cause' &&
          t(tied === 0 ? 'trace.first' : 'trace.first-tied', {
            cause: say(first.says),
            percent: percent(first.confidence),
            count: tied + 1,
          })}
      </p>
      <p>
        {t('trace.counted', {
          claims: trace.claims.length,
          claimed: trace.homes.claimed,
          of: trace.homes.of,
        })}{' '}
        {trace.unit === 'section' &&
          t('trace.by-section', { claimed: trace.units.claimed, of: trace.units.of })}{' '}
        {t('trace.looked', { count: trace.looked, percent: percent(trace.noCommonCause) })}
      </p>
      {trace.unplaced.length > 0 && (
        <p className="quiet">{t('trace.unplaced', { claims: trace.unplaced.join(', ') })}</p>
      )}
    </div>
  );
};
