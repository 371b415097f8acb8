import { accept, reject } from '@libs/kernel';
import type { RecordPunchList, SignPunchList } from './unit.release.commands';
import { codesGuard, defectRecorded, freed, openDefect } from './unit.defects';
import type { UnitEvent } from './unit.events';
import type { UnitFacts } from './unit.facts';
import { judgingOf } from './unit.guards';
import type { UnitDecision } from './unit.rejections';
import type { Unit } from './unit.state';
import { first } from './unit.values';

/** Touch-up found on one walk round the section, item by item. */
export const recordPunchList = ({ data }: RecordPunchList, unit: Unit, facts: UnitFacts): UnitDecision => {
  const ready = judgingOf(unit, facts, data.serial);
  if (!ready.ok) return ready;
  const { foundAt } = data;
  const unfit = first(data.items, (item) =>
    codesGuard({ ...item, foundAt, operation: null }, ready.judging.codes),
  );
  if (unfit !== null) return reject(unfit);

  const { serial } = data;
  return accept<UnitEvent>(
    ...data.items.map((item, index) =>
      defectRecorded(
        {
          serial,
          ...item,
          foundAt,
          defect: `${facts.idBase}-${index}`,
          class: 'punch',
          operation: null,
          photos: [],
          hold: false,
        },
        unit,
        ready.judging,
      ),
    ),
  );
};

/** One signature for the whole list, or for those items of it that are done. */
export const signPunchList = ({ data }: SignPunchList, unit: Unit): UnitDecision => {
  const { serial, note } = data;
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial });
  for (const defect of data.defects) {
    const sought = openDefect(unit, serial, defect);
    if (!sought.ok) return sought;
    if (sought.defect.class !== 'punch') return reject({ code: 'disposition-needed', defect });
  }
  const signed = unit.defects.filter(
    (open) => open.class === 'punch' && (data.defects.length === 0 || data.defects.includes(open.defect)),
  );
  if (signed.length === 0) return reject({ code: 'punch-list-empty', serial });

  const defects = signed.map(({ defect }) => defect);
  const items = signed.reduce((sum, { quantity = 1 }) => sum + quantity, 0);
  return accept<UnitEvent>(
    {
      type: 'PunchListSigned',
      data: { serial: unit.serial, defects, items, ...(note === undefined ? {} : { note }) },
    },
    ...defects.flatMap((defect): readonly UnitEvent[] => [
      { type: 'DefectClosed', data: { serial: unit.serial, defect, how: 'signed' } },
      ...freed(unit, defect, 'satisfied'),
    ]),
  );
};
