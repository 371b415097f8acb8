import type { Finding } from '@libs/judge';
import type { RecordedUnitEvent } from './unit.events';
import type { Unit } from './unit.state';

type Applied = Extract<RecordedUnitEvent, { readonly type: 'RevisionApplied' }>;

/** Values the other revision asks for, and nobody was asked for then, are missing from here on. */
export const revisionApplied = (unit: Unit, { data }: Applied): Unit => ({
  ...unit,
  revision: data.to,
  work: missingFrom(unit.work, data.findings),
});

export const missingFrom = (before: Unit['work'], findings: readonly Finding[]): Unit['work'] => {
  const work = { ...before };
  for (const { rule, operation, characteristic } of findings) {
    const done = work[operation];
    if (rule !== 'value-missing' || done === undefined || characteristic === undefined) continue;
    work[operation] = { ...done, missing: [...new Set([...done.missing, characteristic])] };
  }
  return work;
};
