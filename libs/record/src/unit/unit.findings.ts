import type { Finding } from '@libs/judge';

/** What is grave enough to hold a section. */
export const isGrave = ({ grade }: Finding): boolean => grade !== 'note';

/** The operation whose entry was judged, where the finding is charged to another. */
export const entryOf = (finding: Finding): string => finding.entry ?? finding.operation;

/** Two findings say the same thing of the same entry. */
export const saysTheSame = (one: Finding, other: Finding): boolean =>
  one.rule === other.rule &&
  one.operation === other.operation &&
  one.characteristic === other.characteristic &&
  one.defect === other.defect &&
  entryOf(one) === entryOf(other);
