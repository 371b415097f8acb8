import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useTell } from '../../api/use-tell';
import { useSignedIn } from '../../session/session';
import { TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { RULES } from './weekly-section';

type Budget = AnswerOf<'signals'>['budget'];
const DECIDERS = ['quality-manager', 'administrator'];
const SETS = ['few-counts', 'western-electric', 'nelson'] as const;

/** How many false alarms a month the plant will bear, and the run rules it reads its weekly charts by. */
export const BudgetForm = ({
  budget,
  again,
}: {
  readonly budget: Budget;
  readonly again: () => void;
}): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSignedIn();
  const telling = useTell(again);
  const [size, setSize] = useState(String(budget.falseAlarmsPerMonth));
  const [rules, setRules] = useState(budget.rules);
  if (!me.roles.some((role) => DECIDERS.includes(role))) return null;
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    void telling.send('alarmBudget', { falseAlarmsPerMonth: size, rules });
  };
  return (
    <form className="chart-form no-print" onSubmit={submit}>
      <h3>{t('budget.title')}</h3>
      <TextField name={t('budget.size')} value={size} change={setSize} />
      <label className="field">
        <span className="field-name">{t('budget.rules')}</span>
        <select
          className="input"
          value={rules}
          onChange={(event) => setRules(SETS.find((set) => set === event.target.value) ?? 'few-counts')}
        >
          {SETS.map((set) => (
            <option key={set} value={set}>
              {t(RULES[set])}
            </option>
          ))}
        </select>
      </label>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <button type="submit" className="button" disabled={telling.busy || size === ''}>
        {t('budget.record')}
      </button>
    </form>
  );
};
