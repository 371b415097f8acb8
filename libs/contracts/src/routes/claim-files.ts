import * as claims from '../claim-shapes';
import * as traces from '../trace-shapes';
import { tell } from './route';

const deciders = ['quality-manager', 'administrator'] as const;

/** What goes in and out as files: a file of complaints, and the addresses of those who live in exposed homes. */
export const claimFilesRoutes = {
  claimsFile: tell(
    '/api/claims/files',
    'Take in a CSV of complaints and claims: each row by itself, none of them twice',
    { body: claims.ClaimsFileRequest, answer: claims.ClaimsFileAnswer },
    { access: [...deciders, 'machine'], status: 200, keyed: false },
  ),
  exposureFile: tell(
    '/api/exposure/files',
    'The homes that share a cause with the addresses of those who live there, as CSV; the reason goes on record',
    { body: traces.ExposureExportRequest, answer: traces.ExposureFile },
    { access: deciders, status: 200, keyed: false },
  ),
} as const;
