import type { Signer } from '@libs/judge';
import type { UnitEvent } from '@libs/record';
import type { FACTS } from '../support/unit-spec';
import { INSPECTOR, MANAGER, SERIAL, finding, given, onLine, opened, told } from '../support/unit-spec';

const AGENCY: Signer = { actor: 'agency', crew: null, roles: ['agency-inspector'] };

const LOOSE = finding('value-out-of-limits', 'wired', { class: 'nonconformance' });
const defect: UnitEvent = opened('d-1', LOOSE, 'final', 'electrical');
const punch = (id: string, quantity: number): UnitEvent => ({
  type: 'DefectRecorded',
  data: {
    serial: SERIAL,
    defect: id,
    class: 'punch',
    component: 'outlet',
    symptom: 'loose',
    place: null,
    foundAt: 'final',
    operation: 'wired',
    charged: 'rough-in',
    photos: [],
    quantity,
  },
});

describe('a label', () => {
  const affix = told('AffixLabel', { number: 'ABC000001', photos: [] });
  const asked = (facts: Partial<typeof FACTS>, ...history: readonly UnitEvent[]) =>
    given(...onLine('final'), ...history).when(affix, { signer: INSPECTOR, ...facts });
  const missing = (facts: Partial<typeof FACTS>, ...history: readonly UnitEvent[]): readonly string[] =>
    asked(facts, ...history)
      .events()
      .flatMap((event) => (event.type === 'LabelRefused' ? event.data.findings.map(({ rule }) => rule) : []));

  it('waits for the inspection agency to have seen the home in at least one stage (3282.362(c)(1))', () => {
    expect(missing({ agencySaw: [] })).toStrictEqual(['stage-not-seen']);
  });

  it('waits for defects of every class, and for the red tag', () => {
    const shortage: UnitEvent = { ...punch('s-1', 1) };
    expect(missing({}, defect)).toContain('defect-open');
    expect(missing({}, shortage)).toContain('defect-open');
    const tag: UnitEvent = {
      type: 'RedTagPlaced',
      data: { serial: SERIAL, tag: 'R-1', defect: null, rule: null },
    };
    expect(missing({}, tag)).toStrictEqual(['held']);
  });

  it('waits where a lot that is built in, or a gauge that was used, has been found unfit since', () => {
    const unusable = [
      { operation: 'plated', rule: 'lot-not-usable', kind: 'plate', id: 'P-1' },
      { operation: 'tested', rule: 'instrument-not-usable', kind: 'gauge', id: 'G-1' },
    ] as const;
    expect(missing({ unusable })).toStrictEqual(['lot-not-usable', 'instrument-not-usable']);
  });

  it('goes on once, and another takes its place only from the agency’s hand', () => {
    const on: UnitEvent = { type: 'LabelAffixed', data: { serial: SERIAL, number: 'ABC000001' } };
    asked({}, on).isRejectedAs('label-on-already');
    const replace = told('ReplaceLabel', { number: 'ABC000009', reason: 'damaged', photos: [] });
    given(...onLine('final'), on)
      .when(replace, { signer: MANAGER })
      .isRejectedAs('not-allowed');
    given(...onLine('final'))
      .when(replace, { signer: AGENCY })
      .isRejectedAs('label-not-on');
    given(...onLine('final'), on)
      .when(replace, { signer: AGENCY })
      .records({
        type: 'LabelReplaced',
        data: { serial: SERIAL, number: 'ABC000009', replaces: 'ABC000001', reason: 'damaged' },
      });
  });
});
