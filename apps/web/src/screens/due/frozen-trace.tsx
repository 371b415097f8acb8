import type { ReactNode } from 'react';
import { useSpeech } from '../../words/words';
import type { Trace } from '../claims/claim';
import type { File } from './file';

/** Frozen as it was answered then: by the contract of then, which this one can only have added to. */
const isTrace = (frozen: unknown): frozen is Pick<Trace, 'candidates' | 'verdictSays'> =>
  typeof frozen === 'object' && frozen !== null && 'candidates' in frozen && 'verdictSays' in frozen;

/** What the evidence said when the file was opened: later claims do not change what was decided on. */
export const FrozenTrace = ({ file }: { readonly file: File }): ReactNode => {
  const { t, say } = useSpeech();
  if (!isTrace(file.trace)) return null;
  const { candidates, verdictSays } = file.trace;
  const chosen = candidates.find(({ key }) => key === file.cause);
  const shown = candidates.filter((one, at) => at < SHOWN || one === chosen);
  return (
    <section className="stack tight">
      <h2>{t('due.evidence')}</h2>
      <p>
        {say(verdictSays)}. {t(chosen === undefined ? 'due.no-cause' : 'due.cause-chosen')}{' '}
        {chosen !== undefined && <strong>{say(chosen.says)}</strong>}
      </p>
      <ol className="rows">
        {shown.map((candidate) => (
          <li key={candidate.key}>
            <span className="cause-rank">{candidate.rank}</span>
            <div className="grow">
              <p>
                {say(candidate.says)} · {say(candidate.confidenceSays)},{' '}
                {Math.round(candidate.confidence * 100)} %
              </p>
              {candidate === chosen && (
                <ul>
                  {candidate.evidence.map((one) => (
                    <li key={say(one.says)} className="small">
                      {say(one.says)}
                    </li>
                  ))}
                </ul>
              )}
            </div>
          </li>
        ))}
      </ol>
    </section>
  );
};
const SHOWN = 5;
