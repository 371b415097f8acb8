import type { CompiledPlan } from '@libs/judge';
import type { UnitEvent } from '@libs/record';
import { retroChecker } from '@libs/record';
import { operation, planOfOperations, value } from '../support/judging';
import { PLAN, SERIAL, count, inches, standing, worked } from '../support/unit-spec';

const NOTHING = { lot: () => null, instrument: () => null };

/** The same line, but wire has to be two inches from the edge. */
const STRICTER: CompiledPlan = planOfOperations(
  ...Object.values(PLAN.operations).map((one) =>
    one.id === 'wired'
      ? operation('wired', {
          entry: 'V',
          values: [value('edge', { test: { is: 'compare', op: '>=', number: '2' }, required: '>= 2' })],
        })
      : one,
  ),
);

const WIRED = worked('wired', { values: [inches('edge', '1.5'), count('plates', '0')] });
const BOARDED = worked('boarded');
const withdrawn = (position: number): UnitEvent =>
  ({
    type: 'WorkWithdrawn',
    data: { serial: SERIAL, operation: 'wired', movedTo: 'T-2A', reason: 'misread' },
    corrects: position,
  }) as unknown as UnitEvent;
const laidOpen = (places: readonly string[]): UnitEvent =>
  ({
    type: 'CoverOpened',
    data: {
      serial: SERIAL,
      cover: 'boarded',
      places,
      undone: ['boarded'],
      exposed: [],
      reason: 'look-again',
    },
  }) as unknown as UnitEvent;

/** What each of these would have been told, entry by entry. */
const told = (plan: CompiledPlan, ...events: readonly UnitEvent[]) => {
  const checker = retroChecker(plan, NOTHING);
  const found = events.map((event, at) => checker.take(standing(event, at + 1)));
  return {
    checker,
    rules: found.map((one) => one?.findings.map(({ finding }) => [finding.rule, finding.operation]) ?? []),
    found,
  };
};

describe('a history judged again', () => {
  it('says nothing of what its own plan accepts', () => {
    expect(told(PLAN, WIRED).found).toStrictEqual([null]);
  });

  it('says of a value what a stricter plan would have said, where and when it was entered', () => {
    const { found } = told(STRICTER, WIRED);
    expect(found[0]).toMatchObject({
      serial: SERIAL,
      operation: 'wired',
      position: 1,
      findings: [
        { saidThen: false, finding: { rule: 'value-out-of-limits', recorded: '1.5', required: '>= 2' } },
      ],
    });
  });

  it('says of a cover that it hid what was not there', () => {
    expect(told(PLAN, BOARDED).rules[0]).toContainEqual(['cover-hides-unproven', 'wired']);
  });

  it('knows what was withdrawn as not there, and what it stood over as there again', () => {
    const twice = worked('wired', { values: [inches('edge', '3'), count('plates', '0')] });
    const { checker } = told(PLAN, WIRED, twice, withdrawn(2));
    expect(checker.state.work['wired']?.position).toBe(1);
    const none = told(PLAN, WIRED, withdrawn(1));
    expect(none.checker.state.work['wired']).toBeUndefined();
  });

  it('knows a cover that was laid open everywhere as not there, and at one place as open there', () => {
    expect(told(PLAN, WIRED, BOARDED, laidOpen([])).checker.state.work['boarded']).toBeUndefined();
    const bath = told(PLAN, WIRED, BOARDED, laidOpen(['bath'])).checker.state.work['boarded'];
    expect(bath?.except).toStrictEqual(['bath']);
  });

  it('judges by the plan of the order as it stood: nothing said before a change is said anew', () => {
    const checker = retroChecker(PLAN, NOTHING);
    expect(checker.take(standing(WIRED, 1))).toBeNull();
    checker.judgeBy(STRICTER);
    expect(checker.take(standing(WIRED, 2))?.findings).toHaveLength(1);
  });

  it('counts what happened besides the work as no entry', () => {
    const moved = { type: 'SectionMoved', data: { serial: SERIAL, from: 'floor', to: 'rough-in' } };
    expect(told(STRICTER, moved as unknown as UnitEvent).found).toStrictEqual([null]);
  });
});
