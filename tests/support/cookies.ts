/** What a browser would send back: name and value of every cookie an answer set. */
export const cookiesOf = (answer: { readonly headers: { readonly [name: string]: unknown } }): string => {
  const set = answer.headers['set-cookie'];
  return (Array.isArray(set) ? set.map(String) : []).map((one) => one.split(';')[0] ?? '').join('; ');
};
