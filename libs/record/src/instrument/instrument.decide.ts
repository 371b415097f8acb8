import { accept, reject } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type { InstrumentCommand } from './instrument.commands';
import type { InstrumentEvent, RecordedInstrumentEvent } from './instrument.events';
import { unknownInstrument } from './instrument.state';
import type { Instrument } from './instrument.state';

/** Listed in order of precedence. */
export type InstrumentRejection =
  | { readonly code: 'instrument-kind-unknown'; readonly kind: string }
  | { readonly code: 'instrument-of-other-kind'; readonly instrument: string; readonly kind: string };

/** A rulebook that lists no kinds takes any. */
export type InstrumentFacts = { readonly instrumentKinds: ReadonlySet<string> };

export const decide = (
  { data }: InstrumentCommand,
  { kind }: Instrument,
  { instrumentKinds }: InstrumentFacts,
): Decision<InstrumentEvent, InstrumentRejection> => {
  if (instrumentKinds.size > 0 && !instrumentKinds.has(data.kind)) {
    return reject({ code: 'instrument-kind-unknown', kind: data.kind });
  }
  if (kind !== null && kind !== data.kind) {
    return reject({ code: 'instrument-of-other-kind', instrument: data.instrument, kind });
  }
  return accept({ type: 'InstrumentCalibrated', data });
};

/** What a calibration does not say again of the instrument stays as it was: its resolution, above all. */
export const evolve = (before: Instrument, { data }: RecordedInstrumentEvent): Instrument => {
  const { kind, dueOn, inTolerance } = data;
  const properties = data.properties.length === 0 ? before.properties : data.properties;
  return { kind, properties, dueOn, inTolerance };
};

export const INSTRUMENT: StreamKind<
  InstrumentCommand,
  Instrument,
  InstrumentEvent,
  InstrumentRejection,
  InstrumentFacts
> = { name: 'instrument', initial: unknownInstrument, decide, evolve };
