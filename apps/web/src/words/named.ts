import type { Both } from './words';

/** The name the plant gives a code; a code it does not know stands for itself. */
export const named = (
  list: readonly { readonly id: string; readonly name: Both }[] | undefined,
  id: string,
): Both => list?.find((one) => one.id === id)?.name ?? { en: id, es: id };

/** A plant's words as they stand alone on a button: with a capital. */
export const capital = (text: string, locale: string): string =>
  text.charAt(0).toLocaleUpperCase(locale) + text.slice(1);
