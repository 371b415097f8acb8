import type { Remedy } from '@libs/ledger';
import { Fault } from '@libs/ledger';
import type { ProblemFields } from '../http/problem';
import type { FaultReader } from '../http/problem.filter';

/** What the sender may do about it decides the status: 503 is sent again as it is, with the same key. */
const REMEDIES: { readonly [remedy in Remedy]: Omit<ProblemFields, 'detail'> } = {
  'send-again': {
    status: 503,
    code: 'not-recorded',
    title: 'Not recorded; send the same again with the same key',
    headers: { 'retry-after': '1' },
  },
  'send-again-to-learn': {
    status: 503,
    code: 'recording-unknown',
    title: 'It is not known whether this was recorded; send the same again with the same key to learn',
    headers: { 'retry-after': '1' },
  },
  'send-to-the-other-writer': {
    status: 503,
    code: 'writer-elsewhere',
    title: 'Another server writes this ledger now',
    headers: { 'retry-after': '5' },
  },
  'use-a-new-key': {
    status: 422,
    code: 'key-reused',
    title: 'This Idempotency-Key came before with other content',
    errors: [{ pointer: '#/header/idempotency-key', detail: 'was used before for other content' }],
  },
  'do-not-send-again': { status: 422, code: 'not-recordable', title: 'This can never be recorded as it is' },
};

/** What became of a telling, in the sender's terms; undefined for what is no fault of the ledger. */
export const readLedgerFault: FaultReader = (fault) =>
  fault instanceof Fault ? { ...REMEDIES[fault.remedy], detail: fault.message } : undefined;
