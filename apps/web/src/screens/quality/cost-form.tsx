import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useTell } from '../../api/use-tell';
import { useSignedIn } from '../../session/session';
import { ChoiceField, TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { FigureTable } from './figure-table';

type Costs = Pick<AnswerOf<'defectCounts'>, 'currency' | 'costs'>;
const DECIDERS = ['quality-manager', 'administrator'];

/** What a defect of a component costs the plant to put right: the plant's own reckoning, one component at a time. */
export const CostForm = ({
  costs,
  again,
}: {
  readonly costs: Costs;
  readonly again: () => void;
}): ReactNode => {
  const { t, say } = useSpeech();
  const { me, plant } = useSignedIn();
  const telling = useTell(again);
  const [currency, setCurrency] = useState(costs.currency ?? '');
  const [component, setComponent] = useState('');
  const [cost, setCost] = useState('');
  if (!me.roles.some((role) => DECIDERS.includes(role))) return null;
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    const others = costs.costs.filter((one) => one.component !== component);
    const all = [...others.map((one) => ({ component: one.component, cost: one.cost })), { component, cost }];
    void telling.send('defectCosts', { currency, costs: all }).then((told) => {
      if (told !== undefined) setCost('');
    });
  };
  return (
    <section className="stack tight no-print">
      {costs.costs.length > 0 && (
        <FigureTable
          name={t('costs.title')}
          columns={[t('pareto.by.component'), costs.currency ?? '']}
          rows={costs.costs.map((one) => ({ key: one.component, cells: [say(one.name), one.cost] }))}
          short
        />
      )}
      <form className="chart-form" onSubmit={submit}>
        <h3>{t('costs.title')}</h3>
        <TextField
          name={t('costs.currency')}
          value={currency}
          change={setCurrency}
          hint={t('costs.currency-hint')}
        />
        <ChoiceField
          name={t('pareto.by.component')}
          value={component}
          from={plant.components.map(({ id, name }) => ({ id, says: say(name) }))}
          change={setComponent}
          none={t('costs.choose')}
        />
        <TextField name={t('costs.cost')} value={cost} change={setCost} hint={t('costs.hint')} />
        {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
        <button
          type="submit"
          className="button"
          disabled={telling.busy || component === '' || cost === '' || currency === ''}
        >
          {t('costs.record')}
        </button>
      </form>
    </section>
  );
};
