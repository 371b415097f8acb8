/** Days since 1970-01-01 in the Gregorian calendar. */
export const dayNumber = (day: string): number => {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + date - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
};

const dayOf = (number: number): string => {
  const shifted = number + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const fifth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = fifth < 10 ? fifth + 3 : fifth - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return written(year, month, dayOfYear - Math.floor((153 * fifth + 2) / 5) + 1);
};

const written = (year: number, month: number, date: number): string =>
  `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(date).padStart(2, '0')}`;

export const addDays = (day: string, days: number): string => dayOf(dayNumber(day) + days);

/** A month later by the calendar; the last day of a shorter month stands in for one it does not have. */
export const addMonths = (day: string, months: number): string => {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const at = year * 12 + month - 1 + months;
  const first = (one: number): string => written(Math.floor(one / 12), (one % 12) + 1, 1);
  const lastDate = dayNumber(first(at + 1)) - dayNumber(first(at));
  return addDays(first(at), Math.min(date, lastDate) - 1);
};
