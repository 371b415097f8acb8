import type { Type } from '@nestjs/common';
import { AgencyController } from '../agency/agency.controller';
import { ContainmentsController } from '../containments/containments.controller';
import { CoverOpeningsController } from '../cover-openings/cover-openings.controller';
import { DataPlatesController } from '../data-plates/data-plates.controller';
import { DestinationsController } from '../destinations/destinations.controller';
import { LabelLogController } from '../label-log/label-log.controller';
import { PunchListsController } from '../punch-lists/punch-lists.controller';
import { RedTagsController } from '../red-tags/red-tags.controller';
import { ReleasesController } from '../releases/releases.controller';
import { StationHoldsController } from '../station-holds/station-holds.controller';

/** From found to released: dispositions, the inspection agency, labels and containment. */
export const RELEASE_CONTROLLERS: readonly Type[] = [
  AgencyController,
  ContainmentsController,
  CoverOpeningsController,
  DataPlatesController,
  DestinationsController,
  LabelLogController,
  PunchListsController,
  RedTagsController,
  ReleasesController,
  StationHoldsController,
];
