import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useQuestion } from '../../api/use-question';
import { useTell } from '../../api/use-tell';
import { places } from '../../router/places';
import { goTo } from '../../router/router';
import { TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { SOURCES, sourceWord } from './claim';
import { bodyOf, isReady, newComplaint } from './complaint';
import type { Complaint } from './complaint';
import { today } from './days';
import { DeliveryFields } from './delivery-fields';
import { FailureFields } from './failure-fields';
import { HomeField } from './home-field';
import { Similar } from './similar';
import { TextArea } from './text-area';
import '../release/release.css';
import './claims.css';

const EVERYTHING = {};
const TRIAGE = ['later', 'no-failure', 'claim'] as const;
const TRIAGE_WORDS = {
  later: 'complaint.later',
  'no-failure': 'complaint.no-failure',
  claim: 'complaint.claim',
} as const;

type Part = {
  readonly draft: Complaint;
  readonly change: (part: Partial<Complaint>) => void;
};

const Came = ({ draft, change }: Part): ReactNode => {
  const { t } = useSpeech();
  return (
    <section className="stack">
      <div className="claim-fields">
        <TextField
          name={t('complaint.received')}
          type="date"
          value={draft.receivedOn}
          change={(receivedOn) => change({ receivedOn })}
          hint={t('complaint.received-says')}
        />
        <HomeField home={draft.home} change={(home) => change({ home, section: '' })} />
      </div>
      <fieldset className="field">
        <legend className="field-name">{t('complaint.source')}</legend>
        <div className="choices">
          {SOURCES.map((source) => (
            <button
              key={source}
              type="button"
              className="button"
              aria-pressed={draft.source === source}
              onClick={() => change({ source })}
            >
              {t(sourceWord(source))}
            </button>
          ))}
        </div>
      </fieldset>
      <TextArea name={t('complaint.words')} value={draft.words} change={(words) => change({ words })} />
    </section>
  );
};

const Triage = ({ draft, change }: Part): ReactNode => {
  const { t } = useSpeech();
  return (
    <section className="stack">
      <h2 id="triage">{t('complaint.triage')}</h2>
      <div className="choices" role="group" aria-labelledby="triage">
        {TRIAGE.map((triage) => (
          <button
            key={triage}
            type="button"
            className="button"
            aria-pressed={draft.triage === triage}
            onClick={() => change({ triage })}
          >
            {t(TRIAGE_WORDS[triage])}
          </button>
        ))}
      </div>
      {draft.triage === 'no-failure' && (
        <TextArea
          name={t('complaint.because')}
          value={draft.because}
          change={(because) => change({ because })}
        />
      )}
      {draft.triage === 'claim' && (
        <FailureFields failure={draft} home={draft.home} change={(part) => change(part)} />
      )}
    </section>
  );
};

/** What came in, by the day it came; and in ten seconds what it is, where that is clear. */
export const ComplaintScreen = (): ReactNode => {
  const { t } = useSpeech();
  const { answer } = useQuestion('claims', EVERYTHING);
  const [draft, setDraft] = useState<Complaint>(() => newComplaint(today()));
  const change = (part: Partial<Complaint>): void => setDraft((before) => ({ ...before, ...part }));
  const telling = useTell(() => undefined);
  const send = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const told = await telling.send('complaint', bodyOf(draft));
    if (told !== undefined) goTo(places.claim(told.claim));
  };
  return (
    <main className="page" id="main">
      <div className="page-head">
        <div>
          <h1>{t('complaint.title')}</h1>
          <p>{t('complaint.title-says')}</p>
        </div>
      </div>
      <div className="office-grid">
        <form className="stack" onSubmit={(event) => void send(event)}>
          <Came draft={draft} change={change} />
          <Triage draft={draft} change={change} />
          {draft.triage === 'claim' && draft.home !== '' && (
            <details>
              <summary className="claim-more">{t('complaint.delivery')}</summary>
              <DeliveryFields delivery={draft} claims={answer?.claims ?? []} change={change} />
            </details>
          )}
          {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
          <div>
            <button type="submit" className="button primary big" disabled={telling.busy || !isReady(draft)}>
              {t('complaint.log')}
            </button>
          </div>
        </form>
        <Similar draft={draft} claims={answer?.claims ?? []} />
      </div>
    </main>
  );
};
