/** The boundary: what the server sent, or what we kept ourselves, has the shape its writer gave it. */
export const jsonAs = <A>(text: string): A => {
  const value: unknown = JSON.parse(text);
  return value as A;
};
