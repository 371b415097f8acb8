import { partOf } from '@libs/ledger';
import { INSTRUMENT } from '@libs/record';
import { idsOf, rulebookAt } from './lots';
import type { Calibration, Sender } from './told';
import { arrivalOf, askLedger } from './telling';
import type { Workings } from './workings';

/** The first calibration on record enrolls the instrument. */
export const calibrate =
  (workings: Workings) =>
  async (calibration: Calibration, sender: Sender): Promise<void> => {
    const arrival = arrivalOf(workings, {
      route: 'calibrate',
      body: { ...calibration, via: 'import' as const },
      sender,
    });
    const outcome = await askLedger(workings, arrival, [
      partOf({
        kind: INSTRUMENT,
        id: calibration.instrument,
        command: { type: 'CalibrateInstrument', data: calibration },
        facts: (read, meta) => ({
          instrumentKinds: idsOf(rulebookAt(workings.plans, read, meta)?.instrumentKinds),
        }),
      }),
    ]);
    if (!outcome.ok) {
      throw new Error(`${calibration.instrument} was not recorded: ${JSON.stringify(outcome.rejection)}`);
    }
  };
