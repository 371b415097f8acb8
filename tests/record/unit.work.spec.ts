import {
  INSPECTOR,
  MANAGER,
  NOON,
  WIRED_WELL,
  count,
  finding,
  given,
  inches,
  onLine,
  opened,
  placed,
  recordWork,
  released,
  worked,
} from '../support/unit-spec';
import type { Finding } from '@libs/judge';

const wired = worked('wired', { values: WIRED_WELL });
const looked = worked('looked', { crew: 'quality' });

const hidden = (operation: string): Finding =>
  finding('cover-hides-unproven', operation, { grade: 'refuse', entry: 'boarded' });

const TOO_NEAR = finding('value-out-of-limits', 'wired', {
  class: 'nonconformance',
  characteristic: 'edge',
  required: '>= 1.25',
  recorded: '1',
  unit: '[in_i]',
});

describe('telling that work is done', () => {
  it('is recorded as told, with the revision and plan it was judged by', () => {
    given(...onLine())
      .when(recordWork('framed', { crew: 'floor' }))
      .records(worked('framed', { crew: 'floor' }));
  });

  it('is recorded though it covers what is not proven, and holds the section for each thing covered', () => {
    given(...onLine('drywall'), looked, wired)
      .when(recordWork('boarded', { crew: 'drywall' }))
      .records(
        worked('boarded', { crew: 'drywall', findings: [hidden('plated')] }),
        placed('key-1', hidden('plated')),
      );
  });

  it('opens a defect and its hold for a value out of its limits', () => {
    const values = [inches('edge', '1'), count('plates', '0')];
    given(...onLine())
      .when(recordWork('wired', { values }))
      .records(
        worked('wired', { values, findings: [TOO_NEAR] }),
        opened('key-1', TOO_NEAR, 'floor', 'electrical'),
        placed('key-2', TOO_NEAR, 'key-1'),
      );
  });

  it('says where it was found by where the crew stood', () => {
    const values = [inches('edge', '1'), count('plates', '0')];
    const [, defect] = given(...onLine())
      .when(recordWork('wired', { values }), { station: 'roof-shop' })
      .events();
    expect(defect?.data).toMatchObject({ foundAt: 'roof-shop', charged: 'rough-in' });
  });

  it('holds the section for a value that was asked for and not given', () => {
    const missing = finding('value-missing', 'wired', {
      characteristic: 'edge',
      required: '>= 1.25',
      unit: '[in_i]',
    });
    const values = [count('plates', '0')];
    given(...onLine())
      .when(recordWork('wired', { values }))
      .records(worked('wired', { values, findings: [missing], missing: ['edge'] }), placed('key-1', missing));
  });

  it('makes the hold good once the missing value is told; what was given before still stands', () => {
    const missing = finding('value-missing', 'wired', { characteristic: 'edge' });
    const halfTold = worked('wired', {
      values: [count('plates', '0')],
      findings: [missing],
      missing: ['edge'],
    });
    given(...onLine(), halfTold, placed('h', missing))
      .when(recordWork('wired', { values: [inches('edge', '1.5')] }))
      .records(worked('wired', { values: [inches('edge', '1.5')] }), released('h', 'satisfied'));
  });

  it('does not open the same defect twice when the same is told again', () => {
    const values = [inches('edge', '1'), count('plates', '0')];
    given(
      ...onLine(),
      worked('wired', { values, findings: [TOO_NEAR] }),
      opened('d', TOO_NEAR, 'floor'),
      placed('h', TOO_NEAR, 'd'),
    )
      .when(recordWork('wired', { values }))
      .records(worked('wired', { values, findings: [TOO_NEAR] }));
  });

  it('does not free a defect by telling better values: rework must be verified', () => {
    const bad = worked('wired', {
      values: [inches('edge', '1'), count('plates', '0')],
      findings: [TOO_NEAR],
    });
    given(...onLine(), bad, opened('d', TOO_NEAR, 'floor'), placed('h', TOO_NEAR, 'd'))
      .when(recordWork('wired'))
      .records(worked('wired', { values: WIRED_WELL }));
  });

  it('is marked late when it is told well after it happened', () => {
    const facts = { occurredAt: NOON, receivedAt: '2026-03-02T18:31:00.000Z' };
    given(...onLine())
      .when(recordWork('framed'), facts)
      .records(worked('framed', { late: true }));
  });

  it('is not late by a device clock that runs behind ours', () => {
    const facts = { occurredAt: NOON, receivedAt: '2026-03-02T18:31:00.000Z', skewMs: -10 * 60_000 };
    given(...onLine())
      .when(recordWork('framed'), facts)
      .records(worked('framed'));
  });

  it('goes on record for a section that is pulled or shipped: it is a fact', () => {
    const pulled = {
      type: 'SectionPulled',
      data: { serial: 'T-1A', from: 'floor', reason: 'damaged' },
    } as const;
    given(...onLine(), pulled)
      .when(recordWork('framed'))
      .recordsTypes('WorkRecorded');
  });

  it('holds a section whose cover is up already when the work below is told at last', () => {
    const late = finding('recorded-under-cover', 'plated', { recorded: 'boarded' });
    given(...onLine(), wired, looked, worked('boarded'), placed('h', hidden('plated')))
      .when(recordWork('plated'))
      .records(
        worked('plated', {
          findings: [
            finding('value-missing', 'plated', {
              characteristic: 'thickness',
              required: '>= 0.0625',
              unit: '[in_i]',
            }),
            late,
            finding('lot-missing', 'plated', {
              grade: 'note',
              required: 'plate',
              source: { kind: 'practice', reference: '', row: '' },
            }),
          ],
          missing: ['thickness'],
        }),
        placed(
          'key-1',
          finding('value-missing', 'plated', {
            characteristic: 'thickness',
            required: '>= 0.0625',
            unit: '[in_i]',
          }),
        ),
        placed('key-2', late),
      );
  });

  it('makes the hold of a cover good once the quality manager has reconstructed what it hides', () => {
    const plate = { lot: 'P-1', kind: 'plate', usable: true, properties: [inches('thickness', '0.0625')] };
    given(...onLine(), wired, looked, worked('boarded'), placed('h', hidden('plated')))
      .when(recordWork('plated', { proof: 'reconstructed', crew: 'quality' }), {
        signer: MANAGER,
        scanned: [plate],
      })
      .records(
        worked('plated', { proof: 'reconstructed', lots: ['P-1'], crew: 'quality' }),
        released('h', 'satisfied'),
      );
  });

  it('told a second time digs nothing up: what was told too late stays held', () => {
    const late = finding('recorded-under-cover', 'plated', { recorded: 'boarded' });
    const plate = { lot: 'P-1', kind: 'plate', usable: true, properties: [inches('thickness', '0.07')] };
    const history = [
      ...onLine(),
      wired,
      looked,
      worked('boarded'),
      placed('h-cover', hidden('plated')),
      worked('plated', { findings: [late], lots: ['P-1'] }),
      placed('h-late', late),
    ];
    given(...history)
      .when(recordWork('plated'), { scanned: [plate] })
      .records(worked('plated', { lots: ['P-1'] }));
    given(...history)
      .when(recordWork('plated', { proof: 'reconstructed' }), { scanned: [plate], signer: MANAGER })
      .recordsTypes('WorkRecorded', 'HoldReleased', 'HoldReleased');
  });

  it('is not reconstructed by anyone but the quality manager', () => {
    given(...onLine())
      .when(recordWork('plated', { proof: 'reconstructed' }), { signer: INSPECTOR })
      .isRejectedAs('not-allowed');
  });
});
