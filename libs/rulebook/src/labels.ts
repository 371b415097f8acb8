import type { Words } from '@libs/judge';
import type { Rulebook } from './rulebook';

/** What a characteristic of an operation is called, whatever the design. Undefined: the rulebook has none such. */
export const labelsOf = ({
  body,
}: Rulebook): ((operation: string, characteristic: string) => Words | undefined) => {
  const labels = new Map(
    [...body.values].flatMap(([operation, tables]) =>
      tables.flatMap((rows) =>
        rows.map(({ planned }) => [`${operation} ${planned.characteristic}`, planned.label] as const),
      ),
    ),
  );
  return (operation, characteristic) => labels.get(`${operation} ${characteristic}`);
};
