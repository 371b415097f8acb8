import type { ContainmentOpened } from './containment.events';

export type Containment = {
  readonly opened:
    (Omit<ContainmentOpened['data'], 'note'> & { readonly at: string; readonly actor: string }) | null;
  /** What was found where somebody looked, last. */
  readonly looked: {
    readonly [serial: string]: {
      readonly found: boolean;
      readonly defect: string | null;
      readonly by: string;
      readonly at: string;
    };
  };
};

export const noContainment: Containment = { opened: null, looked: {} };
