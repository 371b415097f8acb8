/** Which sections count and what they are set beside, kept in the address so that it can be sent to someone. */
export const FILTERS = ['model', 'crew', 'attribute', 'value', 'left_from', 'left_to'] as const;
export const AGAINST = ['against_from', 'against_to'] as const;
const CHOICES = [...FILTERS, ...AGAINST] as const;
type Choice = (typeof CHOICES)[number];
export type Chosen = { readonly [choice in Choice]?: string };

export const chosenIn = (query: URLSearchParams): Chosen =>
  Object.fromEntries(
    CHOICES.flatMap((name) => ((query.get(name) ?? '') === '' ? [] : [[name, query.get(name)]])),
  );

export const addressOfChoice = (change: Chosen, rest: URLSearchParams, place = '/quality'): string => {
  const query = new URLSearchParams(rest);
  for (const [name, value] of Object.entries(change)) {
    if (value === '') query.delete(name);
    else query.set(name, value);
  }
  const text = query.toString();
  return text === '' ? place : `${place}?${text}`;
};

/** Only whole choices are asked: an attribute without its value, or half a shift, is still being made up. */
export const wholeOf = (chosen: Chosen): Chosen => {
  const whole = (one: Choice, other: Choice): boolean =>
    (chosen[one] ?? '') !== '' && (chosen[other] ?? '') !== '';
  const { model, crew, attribute, value, left_from, left_to, against_from, against_to } = chosen;
  return {
    ...(model === undefined ? {} : { model }),
    ...(crew === undefined ? {} : { crew }),
    ...(whole('attribute', 'value') ? { attribute, value } : {}),
    ...(whole('left_from', 'left_to') ? { left_from, left_to } : {}),
    ...(whole('against_from', 'against_to') && (against_from ?? '') <= (against_to ?? '')
      ? { against_from, against_to }
      : {}),
  };
};

/** What the sections behind a figure are chosen by: the filter without the span beside it. */
export const filterIn = (chosen: Chosen): Chosen => {
  const { against_from: _from, against_to: _to, ...filter } = wholeOf(chosen);
  return filter;
};

const DAY_MS = 86_400_000;
const dayBefore = (day: string, days: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) - days * DAY_MS).toISOString().slice(0, 10);

/** As many days, right before these. */
export const spanBefore = ({ from, to }: { readonly from: string; readonly to: string }): Chosen => {
  const days = Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS) + 1;
  return { against_from: dayBefore(from, days), against_to: dayBefore(from, 1) };
};
