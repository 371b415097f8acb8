import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useTell } from '../../api/use-tell';
import { useSignedIn } from '../../session/session';
import { ChoiceField, TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';

type Plan = AnswerOf<'buildPlan'>;
type Operation = Plan['stations'][number]['operations'][number];
type Props = { readonly plan: Plan; readonly changed: () => void };

/** One entry of a choice stands for a value asked, or for a kind of lot. */
const VALUE = 'value:';
const LOT = 'lot:';

/** Approved for this home alone: another value than its plan asks, or another kind of lot. */
export const DeviationForm = ({ plan, changed }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const [operation, setOperation] = useState('');
  const [of, setOf] = useState('');
  const [instead, setInstead] = useState('');
  const [reference, setReference] = useState('');
  const [done, setDone] = useState(false);
  const telling = useTell(changed);
  const operations = plan.stations.flatMap((station) => station.operations).filter(asksSomething);
  const chosen = operations.find(({ id }) => id === operation);
  const choose = (next: string): void => {
    setOf(next);
    setInstead('');
    setDone(false);
  };
  const tell = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const allows = of.startsWith(LOT)
      ? ({ what: 'lot', kind: of.slice(LOT.length), substitute: instead } as const)
      : ({ what: 'value', characteristic: of.slice(VALUE.length), required: instead.trim() } as const);
    const body = { home: plan.home, operation, reference: reference.trim(), allows };
    const told = await telling.send('deviation', body);
    if (told !== undefined) choose('');
    setDone(told !== undefined);
  };
  return (
    <details className="book-operation no-print">
      <summary>{t('plan.deviation')}</summary>
      <form className="office-form" onSubmit={(event) => void tell(event)}>
        <ChoiceField
          name={t('plan.deviation-operation')}
          value={operation}
          none={t('choose')}
          from={operations.map(({ id, name }) => ({ id, says: say(name) }))}
          change={(id) => {
            setOperation(id);
            choose('');
          }}
        />
        {chosen !== undefined && (
          <ChoiceField
            name={t('plan.deviation-of')}
            value={of}
            none={t('choose')}
            from={[
              ...chosen.values.map((one) => ({ id: VALUE + one.characteristic, says: say(one.label) })),
              ...chosen.lotKinds.map((kind, at) => ({
                id: LOT + kind,
                says: say(chosen.lots[at] ?? NOTHING),
              })),
            ]}
            change={choose}
          />
        )}
        {chosen !== undefined && of !== '' && (
          <Instead operation={chosen} of={of} value={instead} change={setInstead} />
        )}
        <TextField name={t('plan.deviation-reference')} value={reference} change={setReference} />
        {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
        {done && (
          <p className="notice proven" role="status">
            {t('plan.deviation-done')}
          </p>
        )}
        <button
          type="submit"
          className="button primary"
          disabled={telling.busy || of === '' || instead.trim() === '' || reference.trim() === ''}
        >
          {t('plan.deviation-do')}
        </button>
      </form>
    </details>
  );
};

const NOTHING = { en: '', es: '' };
const asksSomething = ({ values, lotKinds }: Operation): boolean => values.length > 0 || lotKinds.length > 0;

type InsteadProps = {
  readonly operation: Operation;
  readonly of: string;
  readonly value: string;
  readonly change: (value: string) => void;
};

const Instead = ({ operation, of, value, change }: InsteadProps): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  if (of.startsWith(LOT)) {
    return (
      <ChoiceField
        name={t('plan.deviation-lot')}
        value={value}
        none={t('choose')}
        from={(plant.lotKinds ?? [])
          .filter(({ id }) => id !== of.slice(LOT.length))
          .map(({ id, name }) => ({ id, says: say(name) }))}
        change={change}
      />
    );
  }
  const asked = operation.values.find(({ characteristic }) => VALUE + characteristic === of);
  return (
    <TextField
      name={t('plan.deviation-value')}
      value={value}
      change={change}
      mono
      hint={t('plan.deviation-hint', {
        says: asked === undefined ? '' : say(asked.requires),
        cell: asked?.required ?? '',
      })}
    />
  );
};
