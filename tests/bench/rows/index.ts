import type { Row } from '../bench';
import { appendRows } from './append';
import { appendLibraryRows } from './append-library';
import { containmentRow } from './containment';
import { dashboard, dashboardGrowth } from './dashboard';
import { ingestHttpRow } from './ingest-http';
import { rebuildRow } from './rebuild';
import { retroCheckRow } from './retro-check';
import { judge, judgeEntry, planResolve, rulebookLoad } from './rules';
import { scanToVerdict } from './scan-to-verdict';
import { verifyRow } from './verify';
import { verifyLedgerRow } from './verify-ledger';

/** In the order they are shown. */
export const ROWS: readonly Row[] = [
  ...appendRows,
  ...appendLibraryRows,
  rebuildRow,
  dashboard,
  dashboardGrowth,
  scanToVerdict,
  ingestHttpRow,
  rulebookLoad,
  planResolve,
  judgeEntry,
  judge,
  retroCheckRow,
  containmentRow,
  verifyRow,
  verifyLedgerRow,
];
