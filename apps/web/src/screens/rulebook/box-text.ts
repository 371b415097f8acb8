/** As many characters as stand in a box's line at the size they are drawn. */
const FITS = 22;

/** A name in one line or two, parted between words; what is longer is cut, and the drawing's title has it whole. */
export const inLines = (text: string): readonly string[] => {
  if (text.length <= FITS) return [text];
  const at = text.lastIndexOf(' ', FITS);
  const first = at <= 0 ? text.slice(0, FITS) : text.slice(0, at);
  const rest = text.slice(first.length).trim();
  return [first, rest.length > FITS ? `${rest.slice(0, FITS - 1)}…` : rest];
};
