import type { PlannedOperation } from '@libs/judge';

type Ordered = Pick<PlannedOperation, 'id' | 'station' | 'requires' | 'hides'>;

/**
 * The order a section is worked in: by station along the line, then as the files have it; but nothing stands
 * before what it requires or hides. The rulebook has no cycles, so there always is one.
 */
export const workingOrder = (
  operations: readonly Ordered[],
  stations: ReadonlyMap<string, number>,
): readonly string[] => {
  const byId = new Map(operations.map((operation) => [operation.id, operation]));
  const placed = new Set<string>();
  const place = (operation: Ordered): void => {
    for (const id of needsOf(operation)) {
      const need = byId.get(id);
      if (need !== undefined && !placed.has(id)) place(need);
    }
    placed.add(operation.id);
  };
  [...operations]
    .sort((a, b) => (stations.get(a.station) ?? 0) - (stations.get(b.station) ?? 0))
    .forEach((operation) => {
      if (!placed.has(operation.id)) place(operation);
    });
  return [...placed];
};

export const needsOf = ({ requires, hides }: Pick<Ordered, 'requires' | 'hides'>): readonly string[] => [
  ...requires.map(({ operation }) => operation),
  ...hides.map(({ operation }) => operation),
];
