import type { Type } from '@nestjs/common';
import { CalibrationsController } from '../calibrations/calibrations.controller';
import { DeviationsController } from '../deviations/deviations.controller';
import { EquipmentController } from '../equipment/equipment.controller';
import { InstrumentsController } from '../instruments/instruments.controller';
import { OrderChangesController } from '../order-changes/order-changes.controller';
import { QualificationsController } from '../qualifications/qualifications.controller';
import { UnmountingsController } from '../unmountings/unmountings.controller';

/** Lots, instruments, qualifications, and what is approved for one home alone. */
export const EQUIPMENT_CONTROLLERS: readonly Type[] = [
  CalibrationsController,
  DeviationsController,
  EquipmentController,
  InstrumentsController,
  OrderChangesController,
  QualificationsController,
  UnmountingsController,
];
