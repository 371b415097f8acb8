import type { Design } from '@libs/judge';
import type { Domain, OperationRow, RulebookBody, When } from './body';
import type { Complain } from './complain';
import { here } from './complain';
import { designsOver, matches } from './design-space';

type Domains = ReadonlyMap<string, Domain>;
type Row = { readonly row: number; readonly when: When };

/** Rows that no design could ever bring to bear: their conditions exclude each other, or others always go before. */
export const checkDeadRows = (body: RulebookBody, complain: Complain): void => {
  const appliesTo = new Map(body.operations.map(({ id, when }) => [id, when]));
  const whenOf = (id: string): When => appliesTo.get(id) ?? [];
  body.operations.forEach((row) => checkOperation(row, body.domains, complain));
  const check = <R extends Row>(
    tables: ReadonlyMap<string, readonly (readonly R[])[]>,
    file: string,
    others: (row: R) => When,
  ): void => {
    for (const [operation, own] of tables) {
      for (const table of own) {
        const scoped = table.map((row) => ({ row, also: [...whenOf(operation), ...others(row)] }));
        deadIn(scoped, body.domains).forEach(({ row }) => here(complain, file, row)(null, SAYS));
      }
    }
  };
  check(body.covers, 'covers.csv', ({ hide }) => whenOf(hide.operation));
  check(body.values, 'values.csv', () => []);
  check(body.times, 'times.csv', ({ rule }) => whenOf(rule.since));
};

const SAYS =
  'can never apply: its conditions and those of its operations exclude each other, or more specific rows always do';

/** `also`: what must be so besides, for the row to come up at all. */
type Scoped<R> = { readonly row: R; readonly also: When };

const deadIn = <R extends Row>(table: readonly Scoped<R>[], domains: Domains): readonly R[] => {
  if (table.every(({ row, also }) => row.when.length === 0 && also.length === 0)) return [];
  const designs = designsOver(
    table.flatMap(({ row, also }) => [row.when, also]),
    domains,
  );
  const rows = table.map(({ row }) => row);
  const isAlive = ({ row, also }: Scoped<R>): boolean =>
    designs === undefined ||
    designs.some(
      (design) => matches(also, design) && matches(row.when, design) && !isOvertaken(row, rows, design),
    );
  return table.filter((scoped) => !isAlive(scoped)).map(({ row }) => row);
};

/** A row without conditions is there for whatever the others leave out, if that is nothing today. */
const isOvertaken = (row: Row, rows: readonly Row[], design: Design): boolean =>
  row.when.length > 0 &&
  rows.some((other) => other.when.length > row.when.length && matches(other.when, design));

const checkOperation = (
  { file, row, when, variants }: OperationRow,
  domains: Domains,
  complain: Complain,
): void => {
  const complainHere = here(complain, file, row);
  const designs = designsOver([when, ...variants.map((variant) => variant.when)], domains);
  const applying = designs?.filter((design) => matches(when, design));
  if (applying === undefined) return;
  if (applying.length === 0) complainHere('when', 'can never apply: no design meets all its conditions');
  else {
    variants
      .filter((_, at) => !applying.some((design) => firstOf(variants, design) === at))
      .forEach(() =>
        complainHere(
          'variants',
          'can never apply: an earlier variant always goes before, or no design meets it',
        ),
      );
  }
};

const firstOf = (variants: OperationRow['variants'], design: Design): number =>
  variants.findIndex(({ when }) => matches(when, design));
