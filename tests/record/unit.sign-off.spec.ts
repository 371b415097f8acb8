import type { UnitCommand } from '@libs/record';
import { operation, requires } from '../support/judging';
import {
  INSPECTOR,
  JUDGED_BY_PLAN,
  PLAN,
  SERIAL,
  WIRED_WELL,
  count,
  finding,
  given,
  inches,
  onLine,
  placed,
  released,
  worked,
} from '../support/unit-spec';

type SignOff = Extract<UnitCommand, { readonly type: 'SignOffStation' }>['data'];

const { plated: PLATED = operation('plated') } = PLAN.operations;

const signOff = (change: Partial<SignOff> = {}): UnitCommand => ({
  type: 'SignOffStation',
  data: { serial: SERIAL, station: 'rough-in', except: [], values: [], photos: [], crew: null, ...change },
});

const signedOff = (operations: readonly string[], except: SignOff['except'] = []) =>
  ({
    type: 'StationSignedOff',
    data: { serial: SERIAL, station: 'rough-in', operations, except },
    ...JUDGED_BY_PLAN,
  }) as const;

const WIRED_VALUES = WIRED_WELL.map((value) => ({ ...value, operation: 'wired' }));
const plate = { lot: 'P-1', kind: 'plate', usable: true, properties: [inches('thickness', '0.07')] };
const PLATE_MOUNTED = { mounted: [{ station: 'rough-in', lot: plate }] };

describe('signing a station off', () => {
  it('is one signature and one entry for each operation due there, in working order', () => {
    given(...onLine('rough-in'))
      .when(signOff({ values: WIRED_VALUES }), PLATE_MOUNTED)
      .records(
        signedOff(['wired', 'plated']),
        worked('wired', { values: WIRED_WELL }),
        worked('plated', { lots: ['P-1'] }),
      );
  });

  it('leaves inspections and tests to signatures of their own', () => {
    const [signed] = given(...onLine('rough-in'))
      .when(signOff({ values: WIRED_VALUES }), PLATE_MOUNTED)
      .events();
    expect(signed?.data).toMatchObject({ operations: ['wired', 'plated'] });
  });

  it('leaves an operation open that is excepted whole', () => {
    const except = [{ operation: 'plated', places: [] }];
    given(...onLine('rough-in'))
      .when(signOff({ except, values: WIRED_VALUES }))
      .records(signedOff(['wired'], except), worked('wired', { values: WIRED_WELL }));
  });

  it('records an operation done except at a place', () => {
    const except = [{ operation: 'plated', places: ['kitchen'] }];
    given(...onLine('rough-in'))
      .when(signOff({ except, values: WIRED_VALUES }), PLATE_MOUNTED)
      .records(
        signedOff(['wired', 'plated'], except),
        worked('wired', { values: WIRED_WELL }),
        worked('plated', { except: ['kitchen'], lots: ['P-1'] }),
      );
  });

  it('goes on with what was left open at a place, and leaves alone what is done', () => {
    given(
      ...onLine('rough-in'),
      worked('wired', { values: WIRED_WELL }),
      worked('plated', { except: ['kitchen'], lots: ['P-1'] }),
    )
      .when(signOff(), PLATE_MOUNTED)
      .records(signedOff(['plated']), worked('plated', { lots: ['P-1'] }));
  });

  it('records values for an operation that is done already: nothing told is lost', () => {
    given(...onLine('rough-in'), worked('wired', { values: WIRED_WELL }), worked('plated', { lots: ['P-1'] }))
      .when(
        signOff({
          values: [
            { ...inches('edge', '1.75'), operation: 'wired' },
            { ...count('plates', '0'), operation: 'wired' },
          ],
        }),
      )
      .records(
        signedOff(['wired']),
        worked('wired', { values: [inches('edge', '1.75'), count('plates', '0')] }),
      );
  });

  it('holds for each value asked for and not given', () => {
    const missing = (characteristic: string, change: object) =>
      finding('value-missing', 'wired', { characteristic, ...change });
    const edge = missing('edge', { required: '>= 1.25', unit: '[in_i]' });
    const plates = missing('plates', { required: '0', unit: '1' });
    given(...onLine('rough-in'), worked('plated', { lots: ['P-1'] }))
      .when(signOff())
      .records(
        signedOff(['wired']),
        worked('wired', { findings: [edge, plates], missing: ['edge', 'plates'] }),
        placed('key-2', edge),
        placed('key-3', plates),
      );
  });

  it('makes good what an earlier entry was short of', () => {
    const missing = finding('value-missing', 'wired', { characteristic: 'edge' });
    const half = worked('wired', { values: [count('plates', '0')], findings: [missing], missing: ['edge'] });
    given(...onLine('rough-in'), half, placed('h', missing), worked('plated', { lots: ['P-1'] }))
      .when(signOff({ values: [{ ...inches('edge', '1.5'), operation: 'wired' }] }))
      .records(
        signedOff(['wired']),
        worked('wired', { values: [inches('edge', '1.5')] }),
        released('h', 'satisfied'),
      );
  });

  it('judges each operation with those before it done', () => {
    const both = given(...onLine('rough-in')).when(signOff({ values: WIRED_VALUES }), {
      ...PLATE_MOUNTED,
      plan: {
        ...PLAN,
        operations: { ...PLAN.operations, plated: { ...PLATED, requires: requires('wired') } },
      },
    });
    both.recordsTypes('StationSignedOff', 'WorkRecorded', 'WorkRecorded');
  });

  it('records a signature even when nothing is due', () => {
    given(...onLine('rough-in'), worked('wired', { values: WIRED_WELL }), worked('plated', { lots: ['P-1'] }))
      .when(signOff())
      .records(signedOff([]));
  });

  it.each([
    ['an unknown station', { station: 'moon' }, 'station-unknown'],
    ['an unknown operation', { except: [{ operation: 'gilded', places: [] }] }, 'operation-unknown'],
    [
      'an operation of another station',
      { except: [{ operation: 'framed', places: [] }] },
      'operation-not-of-station',
    ],
    [
      'values of an inspection',
      { values: [{ ...inches('edge', '2'), operation: 'looked' }] },
      'operation-signed-apart',
    ],
    [
      'values of what was not done',
      { except: [{ operation: 'wired', places: [] }], values: WIRED_VALUES },
      'value-of-excepted',
    ],
    ['an unknown place', { except: [{ operation: 'wired', places: ['attic'] }] }, 'place-unknown'],
    [
      'an unknown characteristic',
      { values: [{ ...inches('depth', '2'), operation: 'wired' }] },
      'characteristic-unknown',
    ],
  ] as const)('is rejected with %s', (_, change, code) => {
    given(...onLine('rough-in'))
      .when(signOff(change), { signer: INSPECTOR })
      .isRejectedAs(code);
  });
});
