/** What Studbook calls a serial of the log, or why it cannot be called anything. */
export type TakenSerial =
  { readonly ok: true; readonly id: string } | { readonly ok: false; readonly reason: string };

export type Serials = { readonly take: (text: string) => TakenSerial };

const LONGEST = 64;

/**
 * Serials are printed on labels and typed by hand: letters, digits, and . _ : - only. Other characters become a
 * hyphen; where that would make two serials one, the later is refused rather than written into the other's history.
 */
export const serialsOf = (): Serials => {
  const byText = new Map<string, TakenSerial>();
  const byId = new Map<string, string>();

  const settle = (text: string): TakenSerial => {
    const id = text
      .normalize('NFC')
      .replace(/[^A-Za-z0-9._:-]+/g, '-')
      .replace(/^[^A-Za-z0-9]+/, '');
    if (id === '') return { ok: false, reason: `serial "${text}" has no letter or digit` };
    if (id.length > LONGEST)
      return { ok: false, reason: `serial "${text}" is longer than ${LONGEST} characters` };

    const other = byId.get(id);
    if (other !== undefined && other !== text) {
      return { ok: false, reason: `serial "${text}" would be written as ${id}, as "${other}" is` };
    }
    byId.set(id, text);
    return { ok: true, id };
  };

  return {
    take: (text) => {
      const known = byText.get(text) ?? settle(text);
      byText.set(text, known);
      return known;
    },
  };
};
