import * as equipment from '../equipment-shapes';
import * as shapes from '../shapes';
import { get, tell } from './route';

const managers = ['quality-manager', 'administrator'] as const;

/** Lots, instruments, who may sign what, and what is approved for one home alone. */
export const equipmentRoutes = {
  equipment: get(
    '/api/equipment',
    'Lots, instruments and qualifications, with their days',
    equipment.EquipmentAnswer,
  ),
  instrumentReach: get(
    '/api/instruments/{instrument}/reach',
    'Every section an instrument tested since it was last found good',
    equipment.InstrumentReachAnswer,
  ),
  lotReach: get('/api/lots/{lot}/reach', 'Every section a lot is built into', equipment.LotReachAnswer),
  quarantine: tell(
    '/api/lots/{lot}/quarantine',
    'Quarantine a lot; every section it is built into is held',
    { body: equipment.QuarantineRequest, answer: equipment.LotReachTold },
    { access: ['quality-manager', 'inspector', 'administrator'] },
  ),
  lotRelease: tell(
    '/api/lots/{lot}/release',
    'Release a lot from quarantine, and the sections held for it',
    { body: equipment.LotReleaseRequest, answer: equipment.LotReachTold },
    { access: managers },
  ),
  unmounting: tell('/api/unmountings', 'Take a lot off its station', {
    body: equipment.UnmountingRequest,
    answer: shapes.Recorded,
  }),
  calibration: tell(
    '/api/calibrations',
    'Record a calibration, as found; the first enrolls the instrument',
    { body: equipment.CalibrationRequest, answer: shapes.Recorded },
    { access: ['quality-manager', 'inspector', 'administrator', 'machine'] },
  ),
  qualification: tell(
    '/api/qualifications',
    'Say what somebody may sign for besides, and until when',
    { body: equipment.QualificationRequest, answer: shapes.Recorded },
    { access: managers },
  ),
  qualificationEnd: tell(
    '/api/qualifications/end',
    'End what somebody may sign for besides',
    { body: equipment.QualificationEndRequest, answer: shapes.Recorded },
    { access: managers },
  ),
  orderChange: tell(
    '/api/order-changes',
    'Change the design of an ordered home: what is now due, undone or newly wrong is told for each section',
    { body: equipment.OrderChangeRequest, answer: shapes.WorkAnswer },
    { access: managers },
  ),
  deviation: tell(
    '/api/deviations',
    'Approve a deviation for one home',
    { body: equipment.DeviationRequest, answer: shapes.WorkAnswer },
    { access: ['quality-manager'] },
  ),
} as const;
