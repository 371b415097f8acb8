/** The span asked about, kept in the address so that it can be sent to someone. Empty: the server's own, 90 days. */
export type Span = { readonly from: string | null; readonly to: string | null };

export const spanOf = (query: URLSearchParams): Span => ({ from: query.get('from'), to: query.get('to') });

export const addressOfSpan = ({ from, to }: Span, rest: URLSearchParams, place = '/quality'): string => {
  const query = new URLSearchParams(rest);
  for (const [name, day] of [
    ['from', from],
    ['to', to],
  ] as const) {
    if (day === null || day === '') query.delete(name);
    else query.set(name, day);
  }
  const text = query.toString();
  return text === '' ? place : `${place}?${text}`;
};

const DAY_MS = 86_400_000;
/** The span of so many weeks that ends on the same day. */
export const weeksUpTo = (to: string, weeks: number): Span => {
  const from = new Date(Date.parse(`${to}T00:00:00Z`) - (weeks * 7 - 1) * DAY_MS);
  return { from: from.toISOString().slice(0, 10), to };
};
