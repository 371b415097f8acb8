import type { Span, TimeRule } from '@libs/judge';
import { judgeAsking, judgeWork } from '@libs/judge';
import { done, entryOf, operation, planOfOperations, SOURCE, stateOf } from '../support/judging';

const rule = (change: Partial<TimeRule>): TimeRule => ({
  since: 'taped',
  atLeast: null,
  atMost: null,
  grade: 'hold',
  source: SOURCE,
  ...change,
});
const span = (value: string, unit: string): Span => ({ value, unit });
const at = (time: string): string => `2026-03-14T${time}:00.000-05:00`;

const told = (times: readonly TimeRule[], from: string, to: string) =>
  judgeWork(
    planOfOperations(operation('taped', { station: 'drywall' }), operation('textured', { times })),
    stateOf({ taped: done({ occurredAt: from }) }),
    entryOf('textured', { occurredAt: to }),
  );

describe('mud has to dry before texture', () => {
  const dries = [rule({ atLeast: span('12', 'h') })];

  it('too soon is charged to who came too soon, with how long it was', () => {
    expect(told(dries, at('08:00'), at('19:54'))).toStrictEqual([
      {
        rule: 'too-soon-after',
        grade: 'hold',
        class: 'nonconformance',
        operation: 'textured',
        station: 'rough-in',
        characteristic: 'taped',
        required: '>= 12',
        recorded: '11.9',
        unit: 'h',
        source: SOURCE,
      },
    ]);
  });

  it('to the very millisecond it is long enough, whatever the offsets', () => {
    expect(told(dries, at('08:00'), at('20:00'))).toStrictEqual([]);
    expect(told(dries, at('08:00'), '2026-03-15T01:00:00.000Z')).toStrictEqual([]);
    expect(told(dries, at('08:00'), '2026-03-15T00:59:59.999Z')).toHaveLength(1);
  });

  it('before it is too soon as well', () => {
    expect(told(dries, at('20:00'), at('08:00'))).toMatchObject([{ recorded: '0' }]);
  });

  it('is nothing to speak of while nothing was taped: the order of work says that', () => {
    const plan = planOfOperations(operation('taped'), operation('textured', { times: dries }));
    expect(judgeWork(plan, stateOf({}), entryOf('textured'))).toStrictEqual([]);
  });
});

describe('a test is not older than so long at the label', () => {
  const fresh = [rule({ atMost: span('1', 'd'), grade: 'refuse' })];

  it('is charged to the test, which has grown old', () => {
    expect(told(fresh, at('08:00'), '2026-03-15T13:00:00.001Z')).toMatchObject([
      {
        rule: 'too-long-after',
        grade: 'refuse',
        class: 'record',
        operation: 'taped',
        station: 'drywall',
        entry: 'textured',
        required: '<= 1',
        recorded: '1',
        unit: 'd',
      },
    ]);
    expect(told(fresh, at('08:00'), '2026-03-15T13:00:00.000Z')).toStrictEqual([]);
  });

  it('refuses the asking, where it is known when that is', () => {
    const plan = planOfOperations(operation('taped'), operation('labelled', { times: fresh }));
    const state = stateOf({ taped: done({ occurredAt: at('08:00') }) });
    const ask = (occurredAt?: string) =>
      judgeAsking(plan, state, { operation: 'labelled', except: [], ...(occurredAt && { occurredAt }) });
    expect(ask('2026-03-17T08:00:00.000Z')).toMatchObject([{ rule: 'too-long-after', grade: 'refuse' }]);
    expect(ask()).toStrictEqual([]);
  });
});
