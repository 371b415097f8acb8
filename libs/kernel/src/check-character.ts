/**
 * The check character of ISO 7064, hybrid system MOD 37,36: finds every single wrong character and nearly every swap of
 * neighbours. Letters and digits count; joiners, spaces and case do not.
 */
const CHARACTERS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';
const M = CHARACTERS.length;

export const checkable = (text: string): string => text.toUpperCase().replace(/[^0-9A-Z]/g, '');

/** Undefined where there is nothing to check. */
export const checkCharacter = (text: string): string | undefined => {
  const characters = checkable(text);
  if (characters === '') return undefined;
  const product = Array.from(characters).reduce((before, character) => {
    const sum = (before + CHARACTERS.indexOf(character)) % M;
    return ((sum === 0 ? M : sum) * 2) % (M + 1);
  }, M);
  return CHARACTERS[(M + 1 - product) % M];
};

/** What is left of a text whose last character checks the rest; undefined where it does not. */
export const withoutCheck = (text: string): string | undefined => {
  const characters = checkable(text);
  const rest = characters.slice(0, -1);
  return characters.length > 1 && checkCharacter(rest) === characters.at(-1) ? rest : undefined;
};
