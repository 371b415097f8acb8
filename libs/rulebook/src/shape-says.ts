const MENDS: readonly (readonly [RegExp, (...found: readonly string[]) => string])[] = [
  [/^Invalid input: expected .+, received undefined$/, () => 'is missing'],
  [/^Unrecognized keys?: (.+)$/, (keys) => `has no field ${keys ?? ''}`],
  [/^Invalid option: expected one of (.+)$/, (all) => `is none of ${(all ?? '').split('|').join(', ')}`],
  [
    /^Invalid input: expected (\S+), received (\S+)$/,
    (wanted, got) => `is ${got ?? ''}, not ${wanted ?? ''}`,
  ],
];

/** What a field lacks, in the words of the other complaints; a shape's own sentence is one already. */
export const shapeSays = (message: string): string => {
  for (const [form, says] of MENDS) {
    const found = form.exec(message);
    if (found !== null) return says(...found.slice(1));
  }
  return message;
};
