/** RFC 4180: a cell with a comma, a quote or a line break is quoted, quotes doubled, lines end in CRLF. */
const cell = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

export const csvOf = (rows: readonly (readonly string[])[]): string =>
  rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
