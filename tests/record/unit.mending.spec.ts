import type { Finding } from '@libs/judge';
import type { UnitEvent } from '@libs/record';
import {
  JUDGED_BY_PLAN,
  MANAGER,
  SERIAL,
  WIRED_WELL,
  correct,
  count,
  finding,
  given,
  inches,
  onLine,
  opened,
  placed,
  recordWork,
  released,
  stateAfter,
  withdraw,
  workData,
  worked,
} from '../support/unit-spec';

const BAD = [inches('edge', '1'), count('plates', '0')];
const TOO_NEAR = finding('value-out-of-limits', 'wired', {
  class: 'nonconformance',
  characteristic: 'edge',
  required: '>= 1.25',
  recorded: '1',
  unit: '[in_i]',
});
const wired = worked('wired', { values: WIRED_WELL });
const looked = worked('looked', { crew: 'quality' });

const withdrawn = (
  operation: string,
  corrects: number,
  with_: {
    readonly holds?: readonly string[];
    readonly defects?: readonly string[];
    readonly movedTo?: string;
  } = {},
): UnitEvent => ({
  type: 'WorkWithdrawn',
  data: {
    serial: SERIAL,
    operation,
    reason: 'misread',
    movedTo: with_.movedTo ?? null,
    holds: with_.holds ?? [],
    defects: with_.defects ?? [],
  },
  corrects,
});

const closedAsWithdrawn = (defect: string): UnitEvent => ({
  type: 'DefectClosed',
  data: { serial: SERIAL, defect, how: 'withdrawn' },
});

describe('withdrawing an entry', () => {
  it('points at the entry it takes back', () => {
    given(...onLine(), wired)
      .when(withdraw('wired'))
      .records(withdrawn('wired', 3));
  });

  it('takes the holds and defects of the entry along', () => {
    given(
      ...onLine(),
      worked('wired', { values: BAD, findings: [TOO_NEAR] }),
      opened('d', TOO_NEAR, 'floor'),
      placed('h', TOO_NEAR, 'd'),
    )
      .when(withdraw('wired'))
      .records(
        withdrawn('wired', 3, { holds: ['h'], defects: ['d'] }),
        closedAsWithdrawn('d'),
        released('h', 'withdrawn'),
      );
  });

  it('leaves holds that a person placed', () => {
    const byHand: UnitEvent = {
      type: 'HoldPlaced',
      data: {
        serial: SERIAL,
        hold: 'h',
        reason: 'look-again',
        operation: 'wired',
        characteristic: null,
        defect: null,
      },
    };
    given(...onLine(), wired, byHand)
      .when(withdraw('wired'))
      .records(withdrawn('wired', 3));
  });

  it('lets the entry before it stand again, with the holds it had made good', () => {
    const missing = finding('value-missing', 'wired', { characteristic: 'edge' });
    const half = worked('wired', { values: [count('plates', '0')], findings: [missing], missing: ['edge'] });
    const rest = worked('wired', { values: [inches('edge', '1.5')] });
    const history = [...onLine(), half, placed('h', missing), rest, released('h', 'satisfied')];
    given(...history)
      .when(withdraw('wired'))
      .records(withdrawn('wired', 5), placed('key-1', missing));
    const state = stateAfter([...history, withdrawn('wired', 5)]);
    expect(state.work['wired']).toMatchObject({ position: 3, missing: ['edge'] });
  });

  it('leaves a cover standing over what is not proven any more, and says so', () => {
    const hidden: Finding = finding('cover-hides-unproven', 'plated', { grade: 'refuse', entry: 'boarded' });
    given(...onLine(), wired, worked('plated'), looked, worked('boarded'))
      .when(withdraw('plated'))
      .records(withdrawn('plated', 4), placed('key-1', hidden));
  });

  it('is rejected where there is nothing to take back', () => {
    given(...onLine())
      .when(withdraw('wired'))
      .isRejectedAs('work-not-recorded');
  });

  it('is rejected towards the serial it is on', () => {
    given(...onLine(), wired)
      .when(withdraw('wired', SERIAL))
      .isRejectedAs('same-serial');
  });
});

describe('an entry that belongs to another serial', () => {
  const moved = { done: stateAfter([wired]).work['wired'], evidence: stateAfter([wired]).evidence['wired'] };
  const facts =
    moved.done === undefined || moved.evidence === undefined
      ? {}
      : { moved: { done: moved.done, evidence: moved.evidence } };
  const command = recordWork('wired', { values: [], movedFrom: { serial: 'T-1B', position: 0 } });

  it('comes over as it stood, and says where from', () => {
    given(...onLine())
      .when(command, facts)
      .records(
        worked('wired', { values: WIRED_WELL, movedFrom: { serial: 'T-1B', position: 1 }, signedBy: 'lead' }),
      );
  });

  it('stays the work of who signed it there, whoever moves it', () => {
    const history = [
      ...onLine(),
      worked('wired', { values: WIRED_WELL, movedFrom: { serial: 'T-1B', position: 1 }, signedBy: 'lead' }),
    ];
    expect(stateAfter(history, { by: MANAGER }).work['wired']?.actor).toBe('lead');
  });

  it('is judged anew here', () => {
    const boarded = worked('boarded');
    const [event] = given(...onLine(), boarded)
      .when(command, facts)
      .events();
    expect(event).toMatchObject({ data: { findings: [{ rule: 'recorded-under-cover' }] } });
  });

  it('is rejected when there is no such entry', () => {
    given(...onLine())
      .when(command)
      .isRejectedAs('work-not-recorded');
  });
});

const corrected = (change: Partial<ReturnType<typeof workData>>): UnitEvent => ({
  type: 'WorkCorrected',
  data: { ...workData('wired', change), reason: 'misread' },
  ...JUDGED_BY_PLAN,
  corrects: 3,
});

describe('correcting what was written down wrong', () => {
  const history = [
    ...onLine(),
    worked('wired', { values: BAD, findings: [TOO_NEAR] }),
    opened('d', TOO_NEAR, 'floor'),
    placed('h', TOO_NEAR, 'd'),
  ];

  it('puts the new values in the place of the old ones; who signed and when stay', () => {
    given(...history)
      .when(correct('wired', WIRED_WELL))
      .records(corrected({ values: WIRED_WELL }));
    const before = stateAfter(history).work['wired'];
    const after = stateAfter([...history, corrected({ values: WIRED_WELL })]).work['wired'];
    expect(after).toStrictEqual({ ...before, values: WIRED_WELL });
  });

  it('does not let the crew write its own nonconformance away', () => {
    given(...history)
      .when(correct('wired', WIRED_WELL))
      .recordsTypes('WorkCorrected');
  });

  it('lets the quality manager say that it never was', () => {
    given(...history)
      .when(correct('wired', WIRED_WELL), { signer: MANAGER })
      .records(corrected({ values: WIRED_WELL }), closedAsWithdrawn('d'), released('h', 'withdrawn'));
  });

  it('opens what the right values show', () => {
    given(...onLine(), wired)
      .when(correct('wired', BAD))
      .records(
        corrected({ values: BAD, findings: [TOO_NEAR] }),
        opened('key-1', TOO_NEAR, 'floor', 'electrical'),
        placed('key-2', TOO_NEAR, 'key-1'),
      );
  });

  it('fills in what was missing, and makes its hold good', () => {
    const missing = finding('value-missing', 'wired', { characteristic: 'edge' });
    const half = worked('wired', { values: [count('plates', '0')], findings: [missing], missing: ['edge'] });
    given(...onLine(), half, placed('h', missing))
      .when(correct('wired', WIRED_WELL))
      .records(corrected({ values: WIRED_WELL }), released('h', 'satisfied'));
  });

  it('is no late work when it only rewrites what a cover hides by now', () => {
    given(...onLine(), wired, worked('plated'), looked, worked('boarded'))
      .when(correct('wired', WIRED_WELL))
      .records(corrected({ values: WIRED_WELL }));
  });

  it('is rejected where nothing was written', () => {
    given(...onLine())
      .when(correct('wired', WIRED_WELL))
      .isRejectedAs('work-not-recorded');
  });
});
