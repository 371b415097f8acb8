import type { AnswerOf, SentBodyOf } from '@libs/contracts';
import type { CompiledPlan, PlannedOperation, PlannedValue, RecordedValue, Test } from '@libs/judge';
import { WET_HALF, demonstrationRulebook, planOf } from './demonstration-rulebook';
import type { SmallPlant } from './small-plant';

/** A photo's SHA-256: the small plant has no photos to look at. */
export const PHOTO = '0'.repeat(64);

/** The wet half's plan, as the small plant judges it by. */
export const WET_PLAN: CompiledPlan = planOf(demonstrationRulebook(), WET_HALF);

export const planned = (operation: string): PlannedOperation => {
  const found = WET_PLAN.operations[operation];
  if (found === undefined) throw new Error(`${operation} is not in the plan of the wet half`);
  return found;
};

const ANYTHING: { readonly [kind in PlannedValue['kind']]: string } = {
  'yes-no': 'yes',
  date: '2026-03-02',
  measure: '1',
  count: '1',
  choice: 'as drawn',
  text: 'as drawn',
  derived: '',
};

/** A value that meets the test: the limit itself, which every published limit allows. */
const meeting = (test: Test, value: PlannedValue): string => {
  switch (test.is) {
    case 'compare':
      return test.number;
    case 'interval':
      return test.from;
    case 'text':
      return test.text;
    case 'boolean':
      return test.boolean ? 'yes' : 'no';
    case 'anyOf':
      return test.tests[0] === undefined ? '' : meeting(test.tests[0], value);
    default:
      return value.choices?.[0] ?? ANYTHING[value.kind];
  }
};

const asked = (operation: string, from: PlannedValue['from']): readonly PlannedValue[] =>
  planned(operation).values.filter(
    (value) => value.from === from && value.kind !== 'derived' && value.asked === 'always',
  );

const recorded = (value: PlannedValue): RecordedValue => ({
  characteristic: value.characteristic,
  value: meeting(value.test, value),
  unit: value.unit,
});

/** All that is asked of an operation, at its limits. */
export const goodValues = (operation: string): readonly RecordedValue[] =>
  asked(operation, 'entry').map(recorded);

/** A lot of every kind an operation uses, with a certificate that meets what is asked, mounted at its station. */
export const mountLotsFor = async (small: SmallPlant, operation: string, mark = '1'): Promise<void> => {
  const { lots, values, station } = planned(operation);
  const kinds = new Set([...lots, ...values.flatMap(({ lotKind }) => lotKind ?? [])]);
  for (const kind of kinds) {
    const lot = `${station}-${kind}-${mark}`;
    const properties = asked(operation, 'lot')
      .filter(({ lotKind }) => lotKind === kind)
      .map(recorded);
    await small.tell('lot', { lot, kind, properties: [...properties] }, 'manager');
    await small.tell('mounting', { station, lot, kind });
  }
};

const signerFor = ({ crew }: PlannedOperation): string => (crew === 'quality' ? 'inspector' : `${crew}-lead`);

/** Told as done, all as planned, by its own crew; tests change what they are about. */
export const tellGood = (
  small: SmallPlant,
  serial: string,
  operation: string,
  change: Partial<SentBodyOf<'work'>> = {},
): Promise<AnswerOf<'work'>> =>
  small.tell(
    'work',
    { serial, operation, values: [...goodValues(operation)], photos: [PHOTO], ...change },
    signerFor(planned(operation)),
  );
