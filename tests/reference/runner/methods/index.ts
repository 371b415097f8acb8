import type { Method } from '../method';
import { ASSOCIATION } from './association';
import { CHARTS } from './charts';
import { MEMORY_CHARTS } from './memory-charts';
import { RATES } from './rates';
import { SAMPLING } from './sampling';
import { SURVIVAL } from './survival';

/** The first that reads a case runs it; a case is known by what it holds, not by its file's name. */
export const METHODS: readonly Method[] = [
  ...SAMPLING,
  ...CHARTS,
  ...MEMORY_CHARTS,
  ...ASSOCIATION,
  ...SURVIVAL,
  ...RATES,
];
