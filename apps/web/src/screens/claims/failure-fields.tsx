import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { useSignedIn } from '../../session/session';
import { ChoiceField, TextField } from '../../ui/field';
import { useSpeech } from '../../words/words';
import type { Both } from '../../words/words';
import type { Failure } from './complaint';

type Props = {
  readonly failure: Failure;
  readonly home: string;
  readonly change: (part: Partial<Failure>) => void;
};

/** What failed, in the plant's own codes: the symptoms its fault map knows of a component come first. */
export const FailureFields = ({ failure, home, change }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const { answer } = useQuestion('homes', home === '' ? null : { search: home });
  const sections = answer?.homes.find((one) => one.home === home)?.sections ?? [];
  const known = new Set(
    plant.faults.filter(({ component }) => component === failure.component).map(({ symptom }) => symptom),
  );
  const symptoms = plant.symptoms.filter(({ id }) => known.size === 0 || known.has(id));
  const options = (list: readonly { readonly id: string; readonly name: Both }[]) =>
    list.map(({ id, name }) => ({ id, says: say(name) })).sort((a, b) => a.says.localeCompare(b.says));
  return (
    <div className="claim-fields">
      <ChoiceField
        name={t('complaint.component')}
        value={failure.component}
        none={t('complaint.choose')}
        from={options(plant.components)}
        change={(component) => change({ component, symptom: '' })}
      />
      <ChoiceField
        name={t('complaint.symptom')}
        value={failure.symptom}
        none={t('complaint.choose')}
        from={options(symptoms)}
        change={(symptom) => change({ symptom })}
      />
      <ChoiceField
        name={t('complaint.section')}
        value={failure.section}
        none={t('complaint.section-unknown')}
        from={sections.map((id) => ({ id, says: id }))}
        change={(section) => change({ section })}
      />
      <ChoiceField
        name={t('complaint.place')}
        value={failure.place}
        none={t('complaint.place-unknown')}
        from={options(plant.places)}
        change={(place) => change({ place })}
      />
      <TextField
        name={t('complaint.noticed')}
        type="date"
        value={failure.noticedOn}
        change={(noticedOn) => change({ noticedOn })}
      />
    </div>
  );
};
