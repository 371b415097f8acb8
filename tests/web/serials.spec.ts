import { checkCharacter } from '@libs/kernel';
import { SILENCE, scanned, typed } from '../../apps/web/src/scan/burst';
import type { Burst, Stroke } from '../../apps/web/src/scan/burst';
import { inPieces, meantBy, surelyMeantBy, tidied } from '../../apps/web/src/scan/serials';

const inField = (atMs: number): Stroke => ({ atMs, inField: true });
const elsewhere = (atMs: number): Stroke => ({ atMs, inField: false });

const burst = (text: string, gapMs: number, stroke = inField): { burst: Burst; atMs: number } =>
  text.split('').reduce<{ burst: Burst; atMs: number }>(
    (so, character) => ({
      burst: typed(so.burst, character, stroke(so.atMs + gapMs)),
      atMs: so.atMs + gapMs,
    }),
    { burst: SILENCE, atMs: 0 },
  );

describe('a scanner that types', () => {
  it.each([1, 10, 30, 60])('is heard when its characters come %s ms apart', (gapMs) => {
    const { burst: heard, atMs } = burst('H26-1059-C', gapMs);
    expect(scanned(heard, inField(atMs + gapMs))).toBe('H26-1059-C');
  });

  it('is told from a quick typist, who needs 80 ms a key', () => {
    const { burst: heard, atMs } = burst('H26-1059-C', 80);
    expect(scanned(heard, inField(atMs + 80))).toBeNull();
  });

  it('is not heard in a pair of rolled keys, nor in an Enter pressed later', () => {
    expect(scanned(burst('as', 20).burst, inField(60))).toBeNull();
    expect(scanned(burst('H26-1059-C', 5).burst, inField(900))).toBeNull();
  });

  it('starts anew after a pause, so that a note typed before does not stick to the scan', () => {
    const { burst: note } = burst('ok', 100);
    const after = 'T-500A'
      .split('')
      .reduce((so, character, at) => typed(so, character, inField(1_000 + at * 5)), note);
    expect(scanned(after, inField(1_040))).toBe('T-500A');
  });

  it('is heard however slow it is where no field has the focus', () => {
    const { burst: heard, atMs } = burst('H26-1059-C', 250, elsewhere);
    expect(scanned(heard, elsewhere(atMs + 250))).toBe('H26-1059-C');
  });

  it('keeps its first character when the tablet woke up late for the second', () => {
    const late = 'T-500A'
      .split('')
      .reduce((so, character, at) => typed(so, character, inField(at === 0 ? 0 : 200 + at * 10)), SILENCE);
    expect(scanned(late, inField(280))).toBe('T-500A');
  });
});

describe('a serial typed by hand', () => {
  const KNOWN = ['H26-1059-A', 'H26-1059-B', 'H26-1060-A', 'T-500A'];

  it('is surely meant with its printed check character, an O for a 0 and an I for a 1 included', () => {
    const check = checkCharacter('H26-1059-A') ?? '';
    expect(surelyMeantBy(`h26 1059 a ${check}`, KNOWN)).toBe('H26-1059-A');
    expect(surelyMeantBy(`H26-IO59-A${check}`, KNOWN)).toBe('H26-1059-A');
    expect(surelyMeantBy(`H26-1059-A${check === 'X' ? 'Y' : 'X'}`, KNOWN)).toBeUndefined();
  });

  it('may come in any case and with stray spaces', () => {
    expect(tidied(' h26-1059 -a')).toBe('H26-1059-A');
  });

  it.each([
    ['H26-1O59-A', 'H26-1059-A'],
    ['H26-IO59-B', 'H26-1059-B'],
    ['h261059a', 'H26-1059-A'],
    ['T-50OA', 'T-500A'],
  ])('%s first suggests %s, since the two look alike', (written, meant) => {
    expect(meantBy(written, KNOWN)[0]).toBe(meant);
  });

  it('suggests the neighbours one slip away', () => {
    expect(meantBy('H26-1059-C', KNOWN)).toStrictEqual(['H26-1059-A', 'H26-1059-B']);
    expect(meantBy('H26-1095-A', KNOWN)).toContain('H26-1059-A');
  });

  it('suggests nothing when nothing is like it', () => {
    expect(meantBy('ZZZZ9999', KNOWN)).toStrictEqual([]);
  });

  it('is shown in pieces that can be read aloud, and is the same text when they are put together', () => {
    expect(inPieces('H26-1059-C').filter((piece) => piece !== '-')).toStrictEqual(['H26', '1059', 'C']);
    expect(inPieces('CB2604170123')).toStrictEqual(['CB', '26', '0417', '0123']);
    for (const serial of ['H26-1059-C', 'CB2604170123', 'x', 'A1.B2_C3:4567890'])
      expect(inPieces(serial).join('')).toBe(serial);
  });
});

describe('a serial typed or scanned without its joiners', () => {
  it('is known for certain where just one has those letters and digits', () => {
    expect(surelyMeantBy('h261059a', ['H26-1059-A', 'H26-1059-B'])).toBe('H26-1059-A');
  });

  it('is only guessed at where a letter may have been a digit, or two serials read the same', () => {
    expect(surelyMeantBy('H26IO59A', ['H26-1059-A'])).toBeUndefined();
    expect(surelyMeantBy('H261059A', ['H26-1059-A', 'H2-61059A'])).toBeUndefined();
  });
});
