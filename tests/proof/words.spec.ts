import { FAILED, OPEN, PROVEN, outcomeSays } from '@libs/proof';
import type { Outcome } from '@libs/proof';

/** Every blank any of the sentences has. */
const VALUES = {
  ...{
    files: 5,
    key: '4a74d590',
    ledger: 'studbook/x',
    size: 9,
    until: '2026',
    events: 3,
    streams: 2,
    home: 'H1',
  },
  ...{
    sections: 2,
    photos: 3,
    held: 4,
    packet: 9,
    tiles: 1,
    checkpoints: 1,
    position: 7,
    bytes: 10,
    at: 3,
    expected: 'a',
  },
  ...{
    found: 'b',
    signedBy: 'c',
    level: 0,
    number: 1,
    from: 1,
    to: 256,
    after: 0,
    head: 8,
    more: 3,
    what: 'key',
  },
};
const PLACE = { file: 'events.jsonl', line: 3, stream: 'section/H1-A', version: 2, position: 7 };

const outcomes: readonly Outcome[] = [
  ...PROVEN.map((code) => ({ is: 'proven', code, place: PLACE, values: VALUES }) as const),
  ...FAILED.map((code) => ({ is: 'failed', code, place: PLACE, values: VALUES }) as const),
  ...OPEN.map((code) => ({ is: 'open', code, place: PLACE, values: VALUES }) as const),
];

describe('what there is to say of a packet', () => {
  it.each(outcomes)('is said in full in both languages: $code', (outcome) => {
    const { en, es } = outcomeSays(outcome);

    expect(en).not.toBe(es);
    for (const text of [en, es]) expect(text).toMatch(/^[A-ZÁÉÍÓÚ][^{}?]+[.]$/);
  });

  it('leaves a blank open where a value is not known, so that a reader sees it', () => {
    expect(outcomeSays({ is: 'failed', code: 'file-missing', place: {}, values: {} }).en).toBe(
      'File ? is missing.',
    );
  });
});
