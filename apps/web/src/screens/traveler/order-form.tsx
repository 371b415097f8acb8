import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { useTell } from '../../api/use-tell';
import { TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { SectionView } from '../rulebook/examination-view';
import { DesignChoice } from './design-choice';
import type { DesignChange } from './design-choice';

type Plan = AnswerOf<'buildPlan'>;
type Preview = AnswerOf<'orderPreview'>;
type Props = { readonly plan: Plan; readonly changed: () => void };

/** What differs between sections is this section's alone; all else is the whole home's. */
const ordered = ({ serial, design }: Plan, changes: readonly DesignChange[]) => {
  const own = new Set(design.filter(({ ofSection }) => ofSection).map(({ attribute }) => attribute));
  const among = (wanted: boolean): Readonly<Record<string, string>> =>
    Object.fromEntries(
      changes
        .filter(({ attribute }) => own.has(attribute) === wanted)
        .map((one) => [one.attribute, one.value]),
    );
  const ofSection = among(true);
  return {
    design: among(false),
    sections: Object.keys(ofSection).length === 0 ? [] : [{ serial, design: ofSection }],
  };
};

/** Another order in mid-line: first what it would make due, undone or newly wrong, then the decision. */
export const OrderForm = ({ plan, changed }: Props): ReactNode => {
  const { t } = useSpeech();
  const [changes, setChanges] = useState<readonly DesignChange[]>([]);
  const [note, setNote] = useState('');
  const [preview, setPreview] = useState<Preview | null>(null);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const telling = useTell(changed);
  const change = (next: readonly DesignChange[]): void => {
    setChanges(next);
    setPreview(null);
  };
  const look = async (): Promise<void> => {
    const result = await ask('orderPreview', { serial: plan.home }, { body: ordered(plan, changes) });
    setPreview(result.ok ? result.answer : null);
    setTrouble(result.ok ? null : result.trouble);
  };
  const tell = async (): Promise<void> => {
    const said = note.trim() === '' ? {} : { note: note.trim() };
    const told = await telling.send('orderChange', { home: plan.home, ...ordered(plan, changes), ...said });
    if (told !== undefined) change([]);
  };
  return (
    <details className="book-operation no-print">
      <summary>{t('plan.order')}</summary>
      <div className="stack tight">
        <DesignChoice plan={plan} changes={changes} change={change} />
        <div>
          <button
            type="button"
            className="button"
            disabled={changes.length === 0}
            onClick={() => void look()}
          >
            {t('plan.order-look')}
          </button>
        </div>
        {trouble !== null && <TroubleNotice trouble={trouble} />}
        {preview !== null && <WouldChange is={preview} />}
        {preview !== null && <TextField name={t('book.note')} value={note} change={setNote} />}
        {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
        {preview !== null && preview.sections.every(({ unfit }) => unfit === null) && (
          <div>
            <button
              type="button"
              className="button primary"
              disabled={telling.busy}
              onClick={() => void tell()}
            >
              {t('plan.order-do')}
            </button>
          </div>
        )}
      </div>
    </details>
  );
};

const WouldChange = ({ is }: { readonly is: Preview }): ReactNode => {
  const { t } = useSpeech();
  const touched = is.sections.filter(
    ({ unfit, due, notDue, changed, findings }) =>
      unfit !== null || [due, notDue, changed, findings].some((list) => list.length > 0),
  );
  return (
    <div className="stack tight" role="status">
      {touched.length === 0 && <p>{t('plan.order-nothing')}</p>}
      {touched.map((section) => (
        <SectionView key={section.serial} of={section} open />
      ))}
    </div>
  );
};
