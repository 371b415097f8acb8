import type { Finding } from '@libs/judge';
import { accept } from '@libs/kernel';
import type { RecheckHolds } from './unit.change.commands';
import { released } from './unit.consequences';
import type { UnitFacts } from './unit.facts';
import { entryOf, saysTheSame } from './unit.findings';
import { saysOfOther } from './unit.judging';
import type { UnitDecision } from './unit.rejections';
import type { Unit } from './unit.state';

/**
 * What a home's own record missed of its sections (the gasket under a mate line that was closed) stands in the
 * home's stream, and is made good in a section's. What the home has taken from sight meanwhile is not proven by
 * being told.
 */
export const recheckHolds = ({ data }: RecheckHolds, unit: Unit, facts: UnitFacts): UnitDecision => {
  const { plan } = facts;
  if (unit.kind === 'unknown' || plan === null) return accept();
  const isMadeGood = (finding: Finding | undefined): boolean =>
    finding !== undefined &&
    finding.operation === data.operation &&
    entryOf(finding) !== data.operation &&
    (finding.rule !== 'cover-hides-unproven' || data.proof === 'reconstructed') &&
    !saysOfOther(unit, entryOf(finding), data.operation, { plan, facts }).some((said) =>
      saysTheSame(said, finding),
    );

  return accept(
    ...unit.holds
      .filter(({ hold, defect }) => defect === null && isMadeGood(unit.raised[hold]?.finding))
      .map(({ hold }) => released(unit.serial, hold, 'satisfied')),
  );
};
