import { floorDay } from '@libs/kernel';
import type { Entry } from './entry';
import { runsOutSoon } from './expiry';
import type { Finding } from './finding';
import { lotKindsOf, servesAs } from './lot-kinds';
import type { PlannedOperation, Source } from './plan';

const PRACTICE: Source = { kind: 'practice', reference: '', row: '' };

/** What came with the work: its photo, its lots, its instrument, and whether it was done where it belongs. */
export const judgeEquipment = (operation: PlannedOperation, entry: Entry): readonly Finding[] => [
  ...judgePhotos(operation, entry),
  ...judgeLots(operation, entry),
  ...judgeInstrument(operation, entry),
  ...judgeStation(operation, entry),
];

/** `seen` without a photo is graver, and is said with its signature. */
const judgePhotos = (operation: PlannedOperation, { photos, proof }: Entry): readonly Finding[] =>
  (operation.photo === 'always' || operation.photo === 'gauge') && photos.length === 0 && proof !== 'seen'
    ? [finding(operation, { rule: 'photo-missing', grade: 'note' })]
    : [];

/** Only the kinds the operation uses: a section inherits every lot of its station. */
const judgeLots = (operation: PlannedOperation, { lots }: Entry): readonly Finding[] => [
  ...operation.lots
    .filter((kind) => !lots.some((lot) => servesAs(operation, lot.kind, kind)))
    .map((kind) => finding(operation, { rule: 'lot-missing', grade: 'note', required: kind })),
  ...lots
    .filter((lot) => !lot.usable && lotKindsOf(operation).has(lot.kind))
    .map((lot) =>
      finding(operation, {
        rule: 'lot-not-usable',
        grade: 'hold',
        class: 'nonconformance',
        required: lot.kind,
        recorded: lot.lot,
      }),
    ),
];

const judgeInstrument = (
  operation: PlannedOperation,
  { instrument, occurredAt }: Entry,
): readonly Finding[] => {
  const required = operation.instrument;
  if (required === null) return [];
  if (instrument === null)
    return [finding(operation, { rule: 'instrument-missing', grade: 'hold', required })];
  if (instrument.kind !== required) {
    return [
      finding(operation, { rule: 'instrument-missing', grade: 'hold', required, recorded: instrument.kind }),
    ];
  }
  const { usable, instrument: recorded, dueOn = null } = instrument;
  if (!usable)
    return [finding(operation, { rule: 'instrument-not-usable', grade: 'hold', required, recorded })];
  return dueOn !== null && runsOutSoon(floorDay(occurredAt), dueOn)
    ? [finding(operation, { rule: 'instrument-due-soon', grade: 'note', required: dueOn, recorded })]
    : [];
};

const judgeStation = (operation: PlannedOperation, { station }: Entry): readonly Finding[] =>
  station === null || station === operation.station
    ? []
    : [
        finding(operation, {
          rule: 'worked-elsewhere',
          grade: 'note',
          required: operation.station,
          recorded: station,
        }),
      ];

const finding = (
  operation: PlannedOperation,
  said: Pick<Finding, 'rule' | 'grade' | 'required' | 'recorded'> & Partial<Pick<Finding, 'class'>>,
): Finding => ({
  class: 'record',
  operation: operation.id,
  station: operation.station,
  source: PRACTICE,
  ...said,
});
