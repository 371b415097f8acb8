/** How people type a word: without accents, in either language, with a letter wrong or two swapped. */

/** Bare letters and digits, single spaces. */
export const bare = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** Mistakes forgiven in a word of this length: none in a short one, where any other word is near. */
const forgiven = (length: number): number => (length < 4 ? 0 : length < 7 ? 1 : 2);

/** Letters put in, left out, changed, or two neighbours swapped (optimal string alignment). */
export const mistakes = (typed: string, meant: string): number => {
  let twoAgo: readonly number[] = [];
  let before: readonly number[] = Array.from({ length: meant.length + 1 }, (_, at) => at);
  for (let i = 1; i <= typed.length; i += 1) {
    const row: number[] = [i];
    for (let j = 1; j <= meant.length; j += 1) {
      const least = Math.min(
        at(before, j) + 1,
        at(row, j - 1) + 1,
        at(before, j - 1) + Number(typed[i - 1] !== meant[j - 1]),
      );
      row.push(isSwapped(typed, meant, i, j) ? Math.min(least, at(twoAgo, j - 2) + 1) : least);
    }
    twoAgo = before;
    before = row;
  }
  return at(before, meant.length);
};

const at = (row: readonly number[], index: number): number => row[index] ?? Infinity;

const isSwapped = (typed: string, meant: string, i: number, j: number): boolean =>
  i > 1 && j > 1 && typed[i - 1] === meant[j - 2] && typed[i - 2] === meant[j - 1];

/** How far a typed word is from a word, or from its beginning: someone may still be typing. Infinity: not meant. */
const wordFar = (typed: string, word: string): number => {
  if (word.startsWith(typed)) return 0;
  const begun = mistakes(typed, word.slice(0, typed.length));
  const whole = mistakes(typed, word);
  const least = Math.min(begun, whole);
  return least <= forgiven(typed.length) ? least : Infinity;
};

/** How far what was typed is from a name: each word typed has to be near some word of it. */
export const farFrom = (typed: string, name: string): number => {
  const words = bare(name).split(' ');
  return bare(typed)
    .split(' ')
    .filter((word) => word !== '')
    .reduce((sum, word) => sum + Math.min(...words.map((one) => wordFar(word, one))), 0);
};

type Both = { readonly en: string; readonly es: string };

/** Those whose name in either language, or whose code, is near; the nearest first, in their own order else. */
export const alike = <N extends { readonly id: string; readonly name: Both }>(
  typed: string,
  from: readonly N[],
): readonly N[] => {
  if (bare(typed) === '') return from;
  const far = ({ id, name }: N): number =>
    Math.min(farFrom(typed, name.en), farFrom(typed, name.es), farFrom(typed, id));
  return from
    .map((one) => ({ one, distance: far(one) }))
    .filter(({ distance }) => distance < Infinity)
    .sort((a, b) => a.distance - b.distance)
    .map(({ one }) => one);
};
