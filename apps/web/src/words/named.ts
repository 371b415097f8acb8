import type { Both } from './words';

/** The name the plant gives a code; a code it does not know stands for itself. */
export const named = (
  list: readonly { readonly id: string; readonly name: Both }[] | undefined,
  id: string,
): Both => list?.find((one) => one.id === id)?.name ?? { en: id, es: id };
