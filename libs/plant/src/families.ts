import type { Ledger } from '@libs/ledger';
import { HOME, SECTION } from '@libs/record';

/** Whose serial it is. Once ordered, this never changes, so that it may be looked up before queuing. */
export type Family = {
  readonly kind: 'section' | 'home';
  readonly serial: string;
  readonly home: string;
  readonly sections: readonly string[];
};

export type Families = {
  /** Undefined: nothing was ordered under that serial. */
  readonly of: (serial: string) => Promise<Family | undefined>;
};

/** Some years of homes at a few sections a day; a plant's whole history would fit twice. */
const KEPT = 20_000;

export const familiesIn = (ledger: Ledger): Families => {
  const known = new Map<string, Family>();

  const lookUp = async (serial: string): Promise<Family | undefined> => {
    const section = await ledger.state(SECTION, serial);
    if (section.kind !== 'unknown') {
      return { kind: 'section', serial, home: section.home, sections: section.sections };
    }
    const home = await ledger.state(HOME, serial);
    return home.kind === 'unknown'
      ? undefined
      : { kind: 'home', serial, home: serial, sections: home.sections };
  };

  return {
    of: async (serial) => {
      const kept = known.get(serial);
      if (kept !== undefined) return kept;

      const family = await lookUp(serial);
      if (family === undefined) return undefined;
      if (known.size >= KEPT) known.clear();
      known.set(serial, family);
      return family;
    },
  };
};
