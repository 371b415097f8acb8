/** The part of an EPCIS 2.0 event (ISO/IEC 19987) that a plant needs. Keys with a prefix are extensions. */
export type EpcisEvent = {
  readonly type: 'ObjectEvent' | 'AssociationEvent';
  readonly action: 'ADD' | 'OBSERVE' | 'DELETE';
  readonly bizStep: BizStep;
  readonly disposition?: string;
  readonly epcList?: readonly string[];
  readonly quantityList?: readonly {
    readonly epcClass: string;
    readonly quantity: number;
    readonly uom?: string;
  }[];
  readonly parentID?: string;
  readonly childEPCs?: readonly string[];
  readonly childQuantityList?: EpcisEvent['quantityList'];
  readonly persistentDisposition?: { readonly set?: readonly string[]; readonly unset?: readonly string[] };
  readonly bizTransactionList?: readonly { readonly type: string; readonly bizTransaction: string }[];
  readonly sensorElementList?: readonly SensorElement[];
  readonly certificationInfo?: string;
  readonly ilmd?: { readonly [extension: `plant:${string}`]: unknown };
  readonly [extension: `plant:${string}`]: unknown;
};

export type SensorElement = {
  readonly sensorMetadata?: { readonly deviceID?: string };
  readonly sensorReport: readonly SensorReport[];
  readonly [extension: `plant:${string}`]: unknown;
};

export type SensorReport = {
  readonly type: string;
  readonly value?: number;
  readonly uom?: string;
  readonly stringValue?: string;
  readonly booleanValue?: boolean;
  readonly exception?: 'ALARM_CONDITION';
  readonly [extension: `plant:${string}`]: unknown;
};

/** Of the standard's 41 business steps (CBV 2.0), those a plant's record has a use for. */
export type BizStep =
  | 'commissioning'
  | 'receiving'
  | 'assembling'
  | 'installing'
  | 'inspecting'
  | 'holding'
  | 'repairing'
  | 'removing'
  | 'destroying'
  | 'storing'
  | 'shipping'
  | 'other';
