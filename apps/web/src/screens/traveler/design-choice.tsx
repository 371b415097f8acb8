import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { useSignedIn } from '../../session/session';
import { ChoiceField, TextField } from '../../ui/field';
import { useSpeech } from '../../words/words';

export type DesignChange = { readonly attribute: string; readonly value: string };
type Props = {
  readonly plan: AnswerOf<'buildPlan'>;
  readonly changes: readonly DesignChange[];
  readonly change: (next: readonly DesignChange[]) => void;
};

/** What of the design changes, and to what: from the rulebook's own lists where it has them. */
export const DesignChoice = ({ plan, changes, change }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const [attribute, setAttribute] = useState('');
  const [value, setValue] = useState('');
  const choose = (id: string): void => {
    setAttribute(id);
    setValue('');
  };
  const add = (): void => {
    change([...changes.filter((one) => one.attribute !== attribute), { attribute, value: value.trim() }]);
    choose('');
  };
  return (
    <>
      <Chosen plan={plan} changes={changes} change={change} />
      <div className="book-find">
        <ChoiceField
          name={t('plan.order-what')}
          value={attribute}
          change={choose}
          none={t('choose')}
          from={plan.design.map((one) => ({ id: one.attribute, says: say(one.name) }))}
        />
        {attribute !== '' && <NewValue plan={plan} attribute={attribute} value={value} change={setValue} />}
      </div>
      {attribute !== '' && (
        <div>
          <button type="button" className="button" disabled={value.trim() === ''} onClick={add}>
            {t('plan.order-add')}
          </button>
        </div>
      )}
    </>
  );
};

type NewValueProps = {
  readonly plan: Props['plan'];
  readonly attribute: string;
  readonly value: string;
  readonly change: (value: string) => void;
};

const NewValue = ({ plan, attribute, value, change }: NewValueProps): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const listed = plant.attributes?.find(({ id }) => id === attribute)?.values ?? [];
  const now = plan.design.find((one) => one.attribute === attribute)?.value ?? '';
  if (listed.length === 0)
    return <TextField name={t('plan.order-to')} value={value} change={change} hint={now} />;
  const others = listed.filter((one) => one.value !== now);
  return (
    <ChoiceField
      name={t('plan.order-to')}
      value={value}
      change={change}
      none={t('choose')}
      from={others.map((one) => ({ id: one.value, says: say(one.says) }))}
    />
  );
};

const Chosen = ({ plan, changes, change }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const valueSays = ({ attribute, value }: DesignChange): string => {
    const known = plant.attributes?.find(({ id }) => id === attribute)?.values;
    const says = known?.find((one) => one.value === value)?.says;
    return says === undefined ? value : say(says);
  };
  return (
    <ul className="rows">
      {changes.map((one) => {
        const before = plan.design.find(({ attribute }) => attribute === one.attribute);
        return (
          <li key={one.attribute}>
            <p className="grow">
              {before === undefined ? one.attribute : say(before.name)}:{' '}
              <s>{before === undefined ? '' : valueSays(before)}</s> <strong>{valueSays(one)}</strong>
            </p>
            <button
              type="button"
              className="button"
              onClick={() => change(changes.filter((other) => other !== one))}
            >
              {t('plan.order-drop')}
            </button>
          </li>
        );
      })}
    </ul>
  );
};
