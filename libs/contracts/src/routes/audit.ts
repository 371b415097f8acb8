import { z } from 'zod';
import * as audit from '../audit';
import { get, tell } from './route';

const readers = ['auditor', 'quality-manager', 'inspector', 'agency-inspector', 'administrator'] as const;

/** What an auditor takes away. */
export const auditRoutes = {
  packet: get('/api/homes/{serial}/packet', "A home's whole history in one ZIP", audit.PacketBytes, {
    access: readers,
    media: 'application/zip',
    query: {
      at: {
        required: false,
        about: 'As the record stood at this position of the ledger; left out: as it stands',
        schema: z.string().regex(/^[1-9]\d{0,14}$/, 'a ledger position: digits'),
      },
    },
  }),
  sample: tell(
    '/api/audit/samples',
    'Draw the homes of an audit by ISO 2859-1; the draw is on record and can be done again',
    { body: audit.SampleRequest, answer: audit.SampleAnswer },
    { access: ['auditor', 'quality-manager', 'agency-inspector', 'administrator'], keyed: false },
  ),
} as const;
