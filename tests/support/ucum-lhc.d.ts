/** The little of the UCUM oracle that tests use; the package ships no types. */
declare module '@lhncbc/ucum-lhc' {
  type Utils = {
    convertUnitTo(
      from: string,
      value: number,
      to: string,
    ): { readonly status: string; readonly toVal: number | null };
    validateUnitString(code: string): { readonly status: string };
  };
  export const UcumLhcUtils: { getInstance(): Utils };
}
