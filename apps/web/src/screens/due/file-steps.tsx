import { useState } from 'react';
import type { ReactNode } from 'react';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';
import type { File, StepProps } from './file';
import { AgencyStep, ApprovalStep, ReferenceStep } from './letter-steps';
import { ClassStep, InitialStep } from './decision-steps';
import { RemedyStep } from './remedy-step';

const STEPS = [
  'initial',
  'notification',
  'class',
  'agency',
  'plan',
  'approval',
  'remedy',
  'completion',
] as const;
type Step = (typeof STEPS)[number];
const WORDS: Readonly<Record<Step, WordKey>> = {
  initial: 'due.step-initial',
  notification: 'due.step-notification',
  class: 'due.step-class',
  agency: 'due.step-agency',
  plan: 'due.step-plan',
  approval: 'due.step-approval',
  remedy: 'due.step-remedy',
  completion: 'due.step-completion',
};
const FORMS: { readonly [step in Step]: (props: StepProps) => ReactNode } = {
  initial: (props) => <InitialStep {...props} />,
  class: (props) => <ClassStep {...props} />,
  agency: (props) => <AgencyStep {...props} />,
  approval: (props) => <ApprovalStep {...props} />,
  remedy: (props) => <RemedyStep {...props} />,
  notification: (props) => <ReferenceStep {...props} step="notification" />,
  plan: (props) => <ReferenceStep {...props} step="remedyPlan" />,
  completion: (props) => <ReferenceStep {...props} step="completion" />,
};

type Props = { readonly file: File; readonly agencyOnly: boolean; readonly again: () => void };

/** What can be put into the file, in the order the regulation has it; one form at a time. */
export const FileSteps = ({ file, agencyOnly, again }: Props): ReactNode => {
  const { t } = useSpeech();
  const [open, setOpen] = useState<Step | null>(null);
  const done = (): void => {
    setOpen(null);
    again();
  };
  return (
    <section className="stack tight no-print">
      <h2>{t('due.steps')}</h2>
      <div className="choices">
        {STEPS.filter((step) => !agencyOnly || step === 'agency').map((step) => (
          <button
            key={step}
            type="button"
            className="button"
            aria-expanded={open === step}
            onClick={() => setOpen(open === step ? null : step)}
          >
            {t(WORDS[step])}
          </button>
        ))}
      </div>
      {open !== null && FORMS[open]({ file, done })}
    </section>
  );
};
