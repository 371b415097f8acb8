import type { InstrumentCalibrated } from './instrument.events';

export type InstrumentCommand = {
  readonly type: 'CalibrateInstrument';
  readonly data: InstrumentCalibrated['data'];
};
