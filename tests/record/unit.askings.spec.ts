import {
  JUDGED_BY_PLAN,
  SERIAL,
  WIRED_WELL,
  ask,
  finding,
  given,
  onLine,
  opened,
  placed,
  worked,
} from '../support/unit-spec';

const plated = worked('plated', { values: [] });
const wired = worked('wired', { values: WIRED_WELL });
const looked = worked('looked', { crew: 'quality' });

describe('asking whether to go on', () => {
  it('is cleared once all that the cover hides and needs is proven', () => {
    given(...onLine(), wired, plated, looked)
      .when(ask('boarded'))
      .records({
        type: 'AskingCleared',
        data: { serial: SERIAL, operation: 'boarded', except: [], findings: [] },
        ...JUDGED_BY_PLAN,
      });
  });

  it('is refused, and the refusal kept, while the cover would hide what is not proven', () => {
    given(...onLine(), wired, looked)
      .when(ask('boarded'))
      .records({
        type: 'AskingRefused',
        data: {
          serial: SERIAL,
          operation: 'boarded',
          except: [],
          findings: [finding('cover-hides-unproven', 'plated', { grade: 'refuse', entry: 'boarded' })],
        },
        ...JUDGED_BY_PLAN,
      });
  });

  it('is cleared except at the kitchen where the work is done except at the kitchen', () => {
    const exceptKitchen = worked('plated', { except: ['kitchen'] });
    given(...onLine(), wired, exceptKitchen, looked)
      .when(ask('boarded'))
      .recordsTypes('AskingRefused');
    given(...onLine(), wired, exceptKitchen, looked)
      .when(ask('boarded', ['kitchen']))
      .recordsTypes('AskingCleared');
  });

  it('is refused while a nonconformance of what it hides is open', () => {
    const tooNear = finding('value-out-of-limits', 'wired', {
      class: 'nonconformance',
      characteristic: 'edge',
    });
    given(...onLine(), wired, plated, looked, opened('d', tooNear, 'rough-in'), placed('h', tooNear, 'd'))
      .when(ask('boarded'))
      .recordsTypes('AskingRefused');
  });

  it('opens no hold: nothing is covered yet', () => {
    given(...onLine())
      .when(ask('boarded'))
      .recordsTypes('AskingRefused');
  });
});
