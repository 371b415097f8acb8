import type { Source } from '@libs/judge';

const KINDS = ['practice', 'memory', 'design', 'derived'] as const;

/** A hard edge's authority: one of the plain kinds by its name, or else the section that states it. */
export const sourceOfEdge = (text: string, row: string): Source => {
  const kind = KINDS.find((one) => one === text);
  return kind === undefined ? { kind: 'published', reference: text, row } : { kind, reference: text, row };
};

/** The authority of a table row; `row` says where it stands: `values.csv:34`. */
export const sourceOfRow = (
  file: string,
  row: number,
  { source_kind, source }: { readonly source_kind: Source['kind']; readonly source: string },
): Source => ({ kind: source_kind, reference: source, row: `${file}:${row}` });
