import type { AnswerOf } from '@libs/contracts';
import { useId } from 'react';
import type { ReactNode } from 'react';
import { useSignedIn } from '../../session/session';
import { ChoiceField, TextField } from '../../ui/field';
import { useSpeech } from '../../words/words';
import { FILTERS, spanBefore } from './filter';
import type { Chosen } from './filter';

type Props = {
  readonly chosen: Chosen;
  readonly answer: Pick<AnswerOf<'yield'>, 'models' | 'from' | 'to'>;
  readonly change: (change: Chosen) => void;
};

const TimeField = ({
  name,
  value,
  change,
}: {
  readonly name: string;
  readonly value: string;
  readonly change: (value: string) => void;
}): ReactNode => {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{name}</label>
      <input
        id={id}
        className="input"
        type="time"
        value={value}
        onChange={(event) => change(event.target.value)}
      />
    </div>
  );
};

const Design = ({ chosen, change }: Pick<Props, 'chosen' | 'change'>): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const attributes = plant.attributes ?? [];
  const values = attributes.find(({ id }) => id === chosen.attribute)?.values ?? [];
  return (
    <>
      <ChoiceField
        name={t('filter.attribute')}
        value={chosen.attribute ?? ''}
        from={attributes.map(({ id, name }) => ({ id, says: say(name) }))}
        change={(attribute) => change({ attribute, value: '' })}
        none={t('filter.any')}
      />
      {values.length > 0 && (
        <ChoiceField
          name={t('filter.value')}
          value={chosen.value ?? ''}
          from={values.map(({ value, says }) => ({ id: value, says: say(says) }))}
          change={(value) => change({ value })}
          none={t('filter.choose')}
        />
      )}
    </>
  );
};

const Against = ({ chosen, answer, change }: Props): ReactNode => {
  const { t } = useSpeech();
  const isSet = chosen.against_from !== undefined || chosen.against_to !== undefined;
  if (!isSet) {
    return (
      <button type="button" className="button" onClick={() => change(spanBefore(answer))}>
        {t('against.before')}
      </button>
    );
  }
  return (
    <>
      <TextField
        name={t('against.from')}
        type="date"
        value={chosen.against_from ?? ''}
        change={(day) => change({ against_from: day })}
      />
      <TextField
        name={t('against.to')}
        type="date"
        value={chosen.against_to ?? ''}
        change={(day) => change({ against_to: day })}
      />
      <button type="button" className="button" onClick={() => change({ against_from: '', against_to: '' })}>
        {t('against.none')}
      </button>
    </>
  );
};

/** Which of the sections count (model, crew, way of building, shift), and another span to set beside this one. */
export const FilterBar = (props: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const { chosen, answer, change } = props;
  const models = [...new Set([...answer.models, ...(chosen.model === undefined ? [] : [chosen.model])])];
  const isFiltered = FILTERS.some((name) => chosen[name] !== undefined);
  return (
    <fieldset className="filter-bar no-print">
      <legend>{t('filter.title')}</legend>
      <ChoiceField
        name={t('filter.model')}
        value={chosen.model ?? ''}
        from={models.map((id) => ({ id, says: id }))}
        change={(model) => change({ model })}
        none={t('filter.any')}
      />
      <ChoiceField
        name={t('filter.crew')}
        value={chosen.crew ?? ''}
        from={plant.crews.map(({ id, name }) => ({ id, says: say(name) }))}
        change={(crew) => change({ crew })}
        none={t('filter.any')}
      />
      <Design chosen={chosen} change={change} />
      <TimeField
        name={t('filter.left-from')}
        value={chosen.left_from ?? ''}
        change={(left_from) => change({ left_from })}
      />
      <TimeField
        name={t('filter.left-to')}
        value={chosen.left_to ?? ''}
        change={(left_to) => change({ left_to })}
      />
      <Against {...props} />
      {isFiltered && (
        <button
          type="button"
          className="button"
          onClick={() => change(Object.fromEntries(FILTERS.map((name) => [name, ''])))}
        >
          {t('filter.all')}
        </button>
      )}
    </fieldset>
  );
};
