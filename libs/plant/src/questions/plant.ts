import type { AnswerOf } from '@libs/contracts';
import { PLANT } from '@libs/record';
import type { Rulebook } from '@libs/rulebook';
import type { Asked } from './asked';
import { GOVERNING } from './governing';

type PlantAnswer = AnswerOf<'plant'>;

/** What every screen needs once. Empty lists while the plant has no rulebook. */
export const plantQuestion =
  ({ ledger, plans, clock }: Asked) =>
  async (): Promise<PlantAnswer> => {
    const { opened } = await ledger.state(PLANT, 'plant');
    const { name, zone, demonstration } = opened ?? NOT_OPENED;
    const known = plans.current();
    return {
      name,
      zone,
      demonstration,
      ledger: ledger.id,
      revision: plans.inForce(new Date(clock()).toISOString())?.revision ?? known?.revision ?? null,
      governing: GOVERNING,
      ...(known === null ? NO_LISTS : listsOf(known.rulebook)),
    };
  };

const NOT_OPENED = { name: '', zone: 'UTC', demonstration: false };

type Lists = Omit<PlantAnswer, 'name' | 'zone' | 'demonstration' | 'ledger' | 'revision' | 'governing'>;

const NO_LISTS: Lists = {
  stations: [],
  crews: [],
  places: [],
  components: [],
  symptoms: [],
  faults: [],
  operations: [],
};

const listsOf = (rulebook: Rulebook): Lists => ({
  stations: rulebook.stations.map(({ id, pos, kind, name, lanes, lotKinds }) => ({
    id,
    pos,
    kind,
    name,
    lanes: [...lanes],
    lotKinds: [...lotKinds],
  })),
  crews: rulebook.crews.map(named),
  places: rulebook.places.map(named),
  components: rulebook.components.map(named),
  symptoms: rulebook.symptoms.map(named),
  faults: rulebook.faults.map(({ component, symptom, causes }) => ({
    component,
    symptom,
    operations: causes.map(({ operation }) => operation),
  })),
  operations: rulebook.operations.map(({ id, name, station }) => ({ id, name, station })),
  reasons: rulebook.reasons.map((reason) => ({ ...named(reason), for: [...reason.for] })),
  lotKinds: rulebook.lotKinds.map(named),
  instrumentKinds: rulebook.instrumentKinds.map(named),
  texts: rulebook.texts.map(named),
  attributes: rulebook.attributes.map(({ id, name, values }) => ({
    id,
    name,
    values: values.map(({ value, says }) => ({ value, says })),
  })),
});

const named = ({
  id,
  name,
}: {
  readonly id: string;
  readonly name: Lists['crews'][number]['name'];
}): Lists['crews'][number] => ({
  id,
  name,
});
