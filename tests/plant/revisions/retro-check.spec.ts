import type { AnswerOf } from '@libs/contracts';
import { DRY, HOME, WET, openSmallPlant, orderDouble } from '../../support/small-plant';
import type { SmallPlant } from '../../support/small-plant';

type Found = Extract<AnswerOf<'retroCheck'>, { readonly is: 'found' }>;

/** A revision run over what is on record, by a plant on a SQLite file. */
describe('a retro-check', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    for (const serial of [WET, DRY]) await small.tell('start', { serial, at: 'chassis' });
  });
  afterEach(() => small.clear());

  const run = async (): Promise<readonly AnswerOf<'retroCheck'>[]> => {
    const lines = await small.plant.rulebook.retroCheck({ revision: 1 }, { from: null, to: null });
    const all: AnswerOf<'retroCheck'>[] = [];
    for await (const line of lines ?? []) all.push(line);
    return all;
  };
  const valuesFound = async (): Promise<readonly (readonly [string, string, boolean])[]> =>
    (await run())
      .filter((line): line is Found => line.is === 'found' && line.rule === 'value-out-of-limits')
      .map(({ serial, operation, saidThen }) => [serial, operation, saidThen] as const);

  const decked = (serial: string) =>
    small.tell('work', {
      serial,
      operation: 'decked',
      values: [
        { characteristic: 'edge-spacing', value: '6.5', unit: '[in_i]' },
        { characteristic: 'field-spacing', value: '12', unit: '[in_i]' },
        { characteristic: 'adhesive', value: 'yes', unit: null },
      ],
    });
  const insulated = (serial: string, batt: string) =>
    small.tell('work', {
      serial,
      operation: 'walls-insulated',
      values: [
        { characteristic: 'batt', value: batt, unit: null },
        { characteristic: 'voids', value: '0', unit: '1' },
      ],
      station: 'insulation',
    });

  it('lists what is out of limits, on the section it is on, and that it was said at the time', async () => {
    await decked(WET);
    expect(await valuesFound()).toStrictEqual([[WET, 'decked', true]]);
    expect((await run()).at(-1)).toMatchObject({ is: 'done', homes: 1, judged: 1 });
  });

  it('accepts what a letter approved for that home, though the letter came after the work', async () => {
    await decked(WET);
    const allows = { what: 'value', characteristic: 'edge-spacing', required: '<= 7' } as const;
    const deviation = { home: HOME, operation: 'decked', reference: 'letter 26-118', allows };
    await small.tell('deviation', deviation, 'manager');
    expect(await valuesFound()).toStrictEqual([]);
  });

  it('accepts it on no other home', async () => {
    await orderDouble(small, 'T-200');
    await small.tell('start', { serial: 'T-200A', at: 'chassis' });
    await decked('T-200A');
    const allows = { what: 'value', characteristic: 'edge-spacing', required: '<= 7' } as const;
    const deviation = { home: HOME, operation: 'decked', reference: 'letter 26-118', allows };
    await small.tell('deviation', deviation, 'manager');
    expect(await valuesFound()).toStrictEqual([['T-200A', 'decked', true]]);
  });

  it('judges each entry by the order as it stood then: before a change by the old one, after it by the new', async () => {
    await insulated(WET, 'R-19');
    await small.tell('orderChange', { home: HOME, design: { stud: '2x4' } }, 'manager');
    await insulated(DRY, 'R-11');
    expect(await valuesFound()).toStrictEqual([]);
    await insulated(DRY, 'R-19');
    expect(await valuesFound()).toStrictEqual([[DRY, 'walls-insulated', true]]);
  });
});
