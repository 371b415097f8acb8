import type { Cause, Factor } from './cause';
import { Members } from './members';
import type { Gathered } from './row-groups';
import type { HomeRow } from './trace-rows';
import type { Unit } from './units';

/** Factors that are read from the home itself. */
const HOME_FACTORS: readonly { readonly factor: Factor; readonly of: (home: HomeRow) => string | null }[] = [
  { factor: 'design', of: ({ model }) => model },
  { factor: 'hauler', of: ({ hauler }) => hauler },
  { factor: 'installer', of: ({ installer }) => installer },
  { factor: 'retailer', of: ({ retailer }) => retailer },
];

/** The units of every design, hauler, installer and retailer. They belong to no operation of their own. */
export const homeGroups = (units: readonly Unit[]): readonly Gathered[] =>
  HOME_FACTORS.flatMap(({ factor, of }) => {
    const groups = new Map<string, Members>();
    units.forEach(({ home }, unit) => {
      const value = of(home);
      if (value === null) return;
      const members = groups.get(value) ?? new Members();
      groups.set(value, members);
      members.add(unit);
    });
    return [...groups].map(([value, members]) => ({
      cause: causeOf(factor, value),
      among: groups.size,
      members,
    }));
  });

const causeOf = (factor: Factor, value: string): Cause => ({
  operation: null,
  station: null,
  outside: null,
  factor,
  value,
});
