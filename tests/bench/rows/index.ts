import type { Row } from '../bench';
import { appendRows } from './append';
import { rebuildRow } from './rebuild';

/** In the order they are shown. */
export const ROWS: readonly Row[] = [...appendRows, rebuildRow];
