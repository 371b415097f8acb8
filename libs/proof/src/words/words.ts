/** The same in every language the plant speaks. */
export type Words = { readonly en: string; readonly es: string };
