const MENDS: readonly (readonly [RegExp, string])[] = [
  [/^Invalid input: expected .+, received undefined$/, 'is missing'],
  [/^Unrecognized keys?: (.+)$/, 'has no field $1'],
  [/^Invalid option: expected one of (.+)$/, 'is none of $1'],
  [/^Invalid input: expected (\S+), received (\S+)$/, 'is $2, not $1'],
];

/** What a field lacks, in the words of the other complaints; a shape's own sentence is one already. */
export const shapeSays = (message: string): string => {
  const mend = MENDS.find(([form]) => form.test(message));
  return mend === undefined ? message : message.replace(...mend).replaceAll('"|"', '", "');
};
