/** Closes a switch over a union: a forgotten case does not compile. */
export const assertNever = (never: never): never => {
  throw new Error(`Not a known case: ${JSON.stringify(never)}`);
};
