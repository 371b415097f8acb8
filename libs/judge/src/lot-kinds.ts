import type { PlannedOperation } from './plan';

/** Kinds of lot an operation uses up, with the approved substitutes for each. */
export const lotKindsOf = (operation: PlannedOperation): ReadonlySet<string> => {
  const named = [...operation.lots, ...operation.values.flatMap(({ lotKind }) => lotKind ?? [])];
  return new Set(named.flatMap((kind) => [kind, ...substitutesFor(operation, kind)]));
};

/** Whether a lot of one kind serves where another is asked for: it is that kind, or approved in its place. */
export const servesAs = (operation: PlannedOperation, lotKind: string, asked: string | undefined): boolean =>
  asked !== undefined && (lotKind === asked || substitutesFor(operation, asked).includes(lotKind));

const substitutesFor = ({ substitutes }: PlannedOperation, kind: string): readonly string[] =>
  substitutes?.[kind] ?? [];
