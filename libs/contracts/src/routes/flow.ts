import { LabelAnswer } from '../release-shapes';
import * as shapes from '../shapes';
import { tell } from './route';

/** Homes and sections on their way through the plant; lots at their stations. */
export const flowRoutes = {
  move: tell('/api/moves', 'Move a section to a station', {
    body: shapes.MoveRequest,
    answer: shapes.WorkAnswer,
  }),
  pull: tell('/api/pulls', 'Pull a section off the line', {
    body: shapes.PullRequest,
    answer: shapes.WorkAnswer,
  }),
  return: tell('/api/returns', 'Return a pulled section to the line', {
    body: shapes.ReturnRequest,
    answer: shapes.WorkAnswer,
  }),
  shipment: tell('/api/shipments', 'Ship a section', {
    body: shapes.ShipmentRequest,
    answer: shapes.WorkAnswer,
  }),
  label: tell('/api/labels', 'Affix a certification label', {
    body: shapes.LabelRequest,
    answer: LabelAnswer,
  }),
  start: tell('/api/starts', 'Start a section on the line', {
    body: shapes.StartRequest,
    answer: shapes.WorkAnswer,
  }),
  home: tell(
    '/api/homes',
    'Order a home',
    { body: shapes.HomeRequest, answer: shapes.WorkAnswer },
    { access: ['quality-manager', 'administrator', 'machine'] },
  ),
  lot: tell('/api/lots', 'Receive a lot', { body: shapes.LotRequest, answer: shapes.Recorded }),
  mounting: tell('/api/mountings', 'Mount a lot at a station', {
    body: shapes.MountingRequest,
    answer: shapes.Recorded,
  }),
} as const;
