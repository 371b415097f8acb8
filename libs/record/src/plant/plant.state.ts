import type { PlantOpened } from './plant.events';

/** What the plant is called, and when its days begin; null until it is opened. */
export type PlantState = { readonly opened: PlantOpened['data'] | null };

export const notOpened: PlantState = { opened: null };
