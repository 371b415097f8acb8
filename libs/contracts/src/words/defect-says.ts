import type { Words } from '@libs/judge';
import { becauseSays, isRule } from './hold-says';
import type { Names } from './names';
import { NOTHING, joined, say } from './say';

type Defect = {
  readonly component: string;
  readonly symptom: string;
  readonly place: string | null;
  readonly characteristic?: string;
};

/** A defect in one phrase: what, how, where. One that a rule opened has the operation and the rule for its code. */
export const defectSays = (defect: Defect, names: Names): Words => {
  const { component, symptom, characteristic } = defect;
  const places = placesSays(defect.place === null ? [] : [defect.place], names);
  if (isRule(symptom)) {
    const because = becauseSays({ reason: symptom, operation: component, characteristic }, names);
    return say('defect.by-rule', { because, places });
  }
  return say('defect.says', {
    component: names.component(component),
    symptom: names.symptom(symptom),
    places,
  });
};

export const placesSays = (places: readonly string[], names: Pick<Names, 'place'>): Words =>
  places.length === 0 ? NOTHING : say('at.places', { places: joined(places.map(names.place), ', ') });
