import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';

import { PLANT } from '../tokens';

@Controller()
export class EquipmentController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.equipment)
  all(): Promise<AnswerOf<'equipment'>> {
    return this.plant.asks.equipment();
  }
}
