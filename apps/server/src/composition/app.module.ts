import type { DynamicModule, Provider, Type } from '@nestjs/common';
import { APP_FILTER, APP_GUARD } from '@nestjs/core';
import { AskingsController } from '../askings/askings.controller';
import { ClaimFilesController } from '../claims/claim-files.controller';
import { ClaimsController } from '../claims/claims.controller';
import { DeterminationsController } from '../determinations/determinations.controller';
import { CorrectionsController } from '../corrections/corrections.controller';
import { AuditController } from '../audit/audit.controller';
import { PhotosController } from '../photos/photos.controller';
import { PacketsController } from '../packets/packets.controller';
import { DefectsController } from '../defects/defects.controller';
import { FeedController } from '../feed/feed.controller';
import { HealthController } from '../health/health.controller';
import { HoldsController } from '../holds/holds.controller';
import { HomesController } from '../homes/homes.controller';
import { AccessGuard } from '../http/access.guard';
import { ProblemFilter } from '../http/problem.filter';
import { KitController } from '../kit/kit.controller';
import { LabelsController } from '../labels/labels.controller';
import { LineController } from '../line/line.controller';
import { LotsController } from '../lots/lots.controller';
import { MeController } from '../me/me.controller';
import { MetricsController } from '../metrics/metrics.controller';
import { MountingsController } from '../mountings/mountings.controller';
import { MovesController } from '../moves/moves.controller';
import { OpenapiController } from '../openapi/openapi.controller';
import { PlantController } from '../plant/plant.controller';
import { PullsController } from '../pulls/pulls.controller';
import { ReturnsController } from '../returns/returns.controller';
import { SectionsController } from '../sections/sections.controller';
import { ShipmentsController } from '../shipments/shipments.controller';
import { SignOffsController } from '../sign-offs/sign-offs.controller';
import { StartsController } from '../starts/starts.controller';
import { StreamController } from '../stream/stream.controller';
import { WorkController } from '../work/work.controller';
import { ChartsController } from '../yield/charts.controller';
import { YieldController } from '../yield/yield.controller';
import { ACCESS_CONTROLLERS } from './access-controllers';
import { EQUIPMENT_CONTROLLERS } from './equipment-controllers';
import { RELEASE_CONTROLLERS } from './release-controllers';
import { RULEBOOK_CONTROLLERS } from './rulebook-controllers';

const CONTROLLERS: readonly Type[] = [
  AskingsController,
  ClaimFilesController,
  ClaimsController,
  DeterminationsController,
  CorrectionsController,
  AuditController,
  PacketsController,
  PhotosController,
  DefectsController,
  FeedController,
  HealthController,
  HoldsController,
  HomesController,
  KitController,
  LabelsController,
  LineController,
  LotsController,
  MeController,
  MetricsController,
  MountingsController,
  MovesController,
  OpenapiController,
  PlantController,
  PullsController,
  ReturnsController,
  SectionsController,
  ShipmentsController,
  SignOffsController,
  StartsController,
  StreamController,
  WorkController,
  YieldController,
  ChartsController,
  ...ACCESS_CONTROLLERS,
  ...EQUIPMENT_CONTROLLERS,
  ...RELEASE_CONTROLLERS,
  ...RULEBOOK_CONTROLLERS,
];

export class AppModule {
  /** `also`: controllers of whoever starts this server, such as the bench's empty one to compare with. */
  static over(parts: readonly Provider[], also: readonly Type[] = []): DynamicModule {
    return {
      module: AppModule,
      controllers: [...CONTROLLERS, ...also],
      providers: [
        ...parts,
        { provide: APP_GUARD, useClass: AccessGuard },
        { provide: APP_FILTER, useClass: ProblemFilter },
      ],
    };
  }
}
