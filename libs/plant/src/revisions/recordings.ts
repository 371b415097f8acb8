import type { UsedInstrument, WorkedLot } from '@libs/judge';
import { INSTRUMENT, LOT } from '@libs/record';
import type { Recordings, Unit } from '@libs/record';
import type { Workings } from '../workings';

/** What lots and instruments say of themselves, looked up once each. */
export type RecordingsBook = {
  /** Everything named is at hand afterwards. */
  readonly lookUp: (lots: Iterable<string>, instruments: Iterable<string>) => Promise<void>;
  readonly at: Recordings;
};

export const recordingsBook = ({ ledger }: Pick<Workings, 'ledger'>): RecordingsBook => {
  const lots = new Map<string, WorkedLot | null>();
  const instruments = new Map<string, UsedInstrument | null>();

  const lookUpLot = async (id: string): Promise<void> => {
    if (lots.has(id)) return;
    const { kind, properties } = await ledger.state(LOT, id);
    // Whether it was fit for use was judged on the day; here only its certificate is asked for.
    lots.set(id, kind === null ? null : { lot: id, kind, usable: true, properties });
  };
  const lookUpInstrument = async (id: string): Promise<void> => {
    if (instruments.has(id)) return;
    const { kind, properties } = await ledger.state(INSTRUMENT, id);
    instruments.set(id, kind === null ? null : { instrument: id, kind, usable: true, properties });
  };
  return {
    lookUp: async (someLots, someInstruments) => {
      for (const id of someLots) await lookUpLot(id);
      for (const id of someInstruments) await lookUpInstrument(id);
    },
    at: { lot: (id) => lots.get(id) ?? null, instrument: (id) => instruments.get(id) ?? null },
  };
};

/** Lots and instruments of the entries that stand. */
export const usedBy = (
  unit: Unit,
): { readonly lots: readonly string[]; readonly instruments: readonly string[] } => {
  const evidence = Object.values(unit.evidence);
  return {
    lots: evidence.flatMap(({ lots }) => lots),
    instruments: evidence.flatMap(({ instrument }) => instrument ?? []),
  };
};
