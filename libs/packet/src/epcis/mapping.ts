import type { RecordedValue } from '@libs/judge';
import type { PacketEvent, PacketHome } from '../packet-home';
import type { BizStep, EpcisEvent, SensorElement } from './epcis-event';
import type { Identifiers } from './identifiers';
import { reportOf } from './measured';

type Mapped = { readonly home: PacketHome; readonly ids: Identifiers; readonly one: PacketEvent };
type Mapping = (mapped: Mapped) => readonly EpcisEvent[];

/**
 * What the plant's events are in EPCIS: the nearest business step of the standard, because every event must have one,
 * and the plant's own word beside it. One event may be two: work that puts a lot in is also an installation.
 */
export const epcisEventsOf = (mapped: Mapped): readonly EpcisEvent[] =>
  (MAPPINGS[mapped.one.type] ?? otherwise)(mapped);

const thing = ({ home, ids, one }: Mapped): string =>
  one.serial === home.home ? ids.home(one.serial) : ids.section(one.serial);

/** The thing itself, seen at a step. */
const seen =
  (bizStep: BizStep, more: Partial<EpcisEvent> = {}): Mapping =>
  (mapped) => [observed(mapped, bizStep, more)];

const observed = (mapped: Mapped, bizStep: BizStep, more: Partial<EpcisEvent>): EpcisEvent => ({
  type: 'ObjectEvent',
  action: 'OBSERVE',
  bizStep,
  epcList: [thing(mapped)],
  ...more,
});

const otherwise: Mapping = seen('other');

const homeOrdered: Mapping = ({ home, ids, one }) => [
  {
    type: 'ObjectEvent',
    action: 'ADD',
    bizStep: 'commissioning',
    disposition: 'active',
    epcList: [ids.home(home.home)],
    ilmd: { 'plant:model': home.model, 'plant:design': one.event.data['design'] },
  },
];

const sectionOrdered: Mapping = (mapped) => [
  {
    type: 'ObjectEvent',
    action: 'ADD',
    bizStep: 'commissioning',
    disposition: 'active',
    epcList: [thing(mapped)],
    ilmd: {
      'plant:partOf': mapped.ids.home(mapped.home.home),
      'plant:design': mapped.one.event.data['design'],
    },
  },
];

/** The sections are joined for good when the first of them starts: an association, which emptying a trailer does not end. */
const homeStarted: Mapping = ({ home, ids }) => [
  {
    type: 'AssociationEvent',
    action: 'ADD',
    bizStep: 'assembling',
    disposition: 'in_progress',
    parentID: ids.home(home.home),
    childEPCs: home.sections.map(({ serial }) => ids.section(serial)),
  },
];

const work: Mapping = (mapped) => {
  const { one, ids } = mapped;
  const values = listIn<RecordedValue>(one.event.data['values']);
  const lots = listIn<string>(one.event.data['lots']);
  const tested = one.type === 'TestRecorded' || values.length > 0;
  const done = observed(mapped, tested ? 'inspecting' : 'assembling', {
    disposition: tested ? verdictOf(one) : 'in_progress',
    ...(values.length === 0 ? {} : { sensorElementList: [measured(mapped, values)] }),
  });
  return lots.length === 0
    ? [done]
    : [
        done,
        installed(
          mapped,
          lots.map((lot) => ids.lot(lot)),
        ),
      ];
};

/** A lot is a class with nobody knowing how much of it went in: one of it stands for some. */
const installed = (mapped: Mapped, lots: readonly string[]): EpcisEvent => ({
  type: 'AssociationEvent',
  action: 'ADD',
  bizStep: 'installing',
  disposition: 'in_progress',
  parentID: thing(mapped),
  childQuantityList: lots.map((epcClass) => ({ epcClass, quantity: 1, uom: 'C62' })),
  'plant:quantity': 'unknown',
});

const measured = ({ one, ids }: Mapped, values: readonly RecordedValue[]): SensorElement => {
  const instrument = textIn(one.event.data['instrument']);
  return {
    ...(instrument === null ? {} : { sensorMetadata: { deviceID: ids.instrument(instrument) } }),
    sensorReport: values.map((value) => reportOf(value, one.findings)),
  };
};

const verdictOf = ({ findings }: PacketEvent): string =>
  findings.some(({ grade, class: kind }) => grade !== 'note' && kind === 'nonconformance')
    ? 'non_conformant'
    : 'conformant';

const labelled: Mapping = (mapped) => {
  const certificate = mapped.ids.document('label', textIn(mapped.one.event.data['number']) ?? 'unknown');
  return [
    observed(mapped, 'inspecting', {
      disposition: 'conformant',
      persistentDisposition: { set: ['completeness_verified'] },
      certificationInfo: certificate,
      bizTransactionList: [{ type: 'cert', bizTransaction: certificate }],
    }),
  ];
};

const defectRecorded: Mapping = (mapped) =>
  mapped.one.event.data['class'] === 'nonconformance'
    ? seen('inspecting', {
        disposition: 'non_conformant',
        persistentDisposition: { set: ['non_conformant'] },
      })(mapped)
    : seen('inspecting')(mapped);

const verified: Mapping = (mapped) =>
  mapped.one.event.data['accepted'] === true
    ? seen('inspecting', { disposition: 'conformant', persistentDisposition: { unset: ['non_conformant'] } })(
        mapped,
      )
    : seen('inspecting', { disposition: 'non_conformant' })(mapped);

const MAPPINGS: { readonly [type: string]: Mapping } = {
  HomeOrdered: homeOrdered,
  SectionOrdered: sectionOrdered,
  HomeStarted: homeStarted,
  SectionStarted: seen('assembling', { disposition: 'in_progress' }),
  SectionMoved: seen('other', { disposition: 'in_progress' }),
  SectionPulled: seen('storing', { disposition: 'in_progress' }),
  SectionReturned: seen('other', { disposition: 'in_progress' }),
  SectionShipped: seen('shipping', { disposition: 'in_transit' }),
  WorkRecorded: work,
  TestRecorded: work,
  WorkCorrected: work,
  DefectRecorded: defectRecorded,
  ReworkDone: seen('repairing', { disposition: 'in_progress' }),
  DefectVerified: verified,
  HoldPlaced: seen('holding', {
    disposition: 'unavailable',
    persistentDisposition: { set: ['unavailable'] },
  }),
  HoldReleased: seen('inspecting', { persistentDisposition: { unset: ['unavailable'] } }),
  RedTagPlaced: seen('holding', {
    disposition: 'unavailable',
    persistentDisposition: { set: ['unavailable'] },
  }),
  RedTagLifted: seen('inspecting', { persistentDisposition: { unset: ['unavailable'] } }),
  LabelAffixed: labelled,
  StageSeen: seen('inspecting'),
};

const textIn = (value: unknown): string | null => (typeof value === 'string' ? value : null);
/** Lists stand in the ledger as they were checked on their way in. */
const listIn = <T>(value: unknown): readonly T[] => (Array.isArray(value) ? (value as readonly T[]) : []);
