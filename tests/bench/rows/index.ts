import type { Row } from '../bench';
import { appendRows } from './append';

/** In the order they are shown. */
export const ROWS: readonly Row[] = [...appendRows];
