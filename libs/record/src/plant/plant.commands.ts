import type { PlantOpened } from './plant.events';

export type PlantCommand = { readonly type: 'OpenPlant'; readonly data: PlantOpened['data'] };
