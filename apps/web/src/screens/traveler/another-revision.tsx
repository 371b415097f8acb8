import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { newKey } from '../../api/key';
import { useQuestion } from '../../api/use-question';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { SectionView } from '../rulebook/examination-view';

type Props = { readonly plan: AnswerOf<'buildPlan'>; readonly changed: () => void };

/** A home on the line keeps its revision until somebody who has seen what changes decides otherwise. */
export const AnotherRevision = ({ plan, changed }: Props): ReactNode => {
  const { t } = useSpeech();
  const { answer } = useQuestion('revisionPreview', { serial: plan.home });
  const [key] = useState(newKey);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  if (answer === null || answer.revision === plan.revision) return null;

  const { revision } = answer;
  const apply = async (): Promise<void> => {
    const result = await ask('revisionApplication', { serial: plan.home }, { body: { revision }, key });
    setTrouble(result.ok ? null : result.trouble);
    if (result.ok) changed();
  };
  return (
    <section className="stack tight no-print book-proposal">
      <h2>{t('plan.would', { revision })}</h2>
      {answer.sections.map((section) => (
        <SectionView key={section.serial} of={section} />
      ))}
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      <div>
        <button type="button" className="button" onClick={() => void apply()}>
          {t('plan.apply', { revision })}
        </button>
      </div>
    </section>
  );
};
