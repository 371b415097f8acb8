import type { z } from 'zod';
import * as more from '../release-shapes';
import * as shapes from '../shapes';
import { get, tell } from './route';

const managers = { access: ['quality-manager', 'administrator'] } as const;
const agency = { access: ['agency-inspector'] } as const;
const deciders = { access: ['quality-manager', 'inspector', 'administrator'] } as const;

const instant = (
  about: string,
): { readonly required: boolean; readonly about: string; readonly schema: z.ZodType } => ({
  required: false,
  about,
  schema: shapes.Instant,
});

/** Containment, labels, and what lets a home go. */
export const releaseRoutes = {
  releases: get('/api/releases', 'Sections near their label, and what each lacks', more.ReleaseListAnswer),
  sectionRelease: get(
    '/api/sections/{serial}/release',
    'What stands between a section and its label',
    more.ReleaseAnswer,
  ),
  labelLog: get('/api/label-log', 'Every label accounted for', more.LabelLogAnswer),
  labelSupply: tell(
    '/api/label-supply',
    'Receive labels',
    { body: more.LabelSupplyRequest, answer: shapes.Recorded },
    { access: [...managers.access, ...agency.access] },
  ),
  labelVoid: tell(
    '/api/label-log/{number}/voiding',
    'Void a spoilt label',
    { body: more.LabelVoidRequest, answer: shapes.Recorded },
    { access: [...managers.access, ...agency.access] },
  ),
  labelReclaim: tell(
    '/api/label-log/{number}/reclaiming',
    'Take a label back',
    { body: more.LabelReclaimRequest, answer: shapes.Recorded },
    agency,
  ),
  labelReplacement: tell(
    '/api/label-replacements',
    'Replace a damaged label by another number',
    { body: more.LabelReplacementRequest, answer: more.LabelAnswer },
    agency,
  ),
  dataPlate: get('/api/homes/{serial}/data-plate', 'What the data plate says', more.DataPlateAnswer),
  sharing: get(
    '/api/containments/sharing',
    'Which other sections in the plant may share what was found',
    more.ContainmentQuestionAnswer,
    {
      query: {
        serial: { required: true, about: 'The section it was found on', schema: shapes.Id },
        operation: { required: true, about: 'The operation that fell short' },
        from: instant('Done at this or later'),
        to: instant('Done at this or earlier'),
      },
    },
  ),
  containments: get('/api/containments', 'What is being contained', more.ContainmentsAnswer),
  containment: tell(
    '/api/containments',
    'Contain what was found: list it, and hold it where asked',
    { body: more.ContainmentRequest, answer: shapes.Recorded },
    deciders,
  ),
  containedLook: tell(
    '/api/containments/{containment}/looks',
    'Tell what was found on one of them',
    { body: more.ContainedLookRequest, answer: shapes.Recorded },
    deciders,
  ),
  site: get('/api/site', 'Homes that have left and whose site work is not all in', more.SiteAnswer),
  destination: tell(
    '/api/destinations',
    'Say where a home goes',
    { body: more.DestinationRequest, answer: shapes.WorkAnswer },
    managers,
  ),
} as const;
