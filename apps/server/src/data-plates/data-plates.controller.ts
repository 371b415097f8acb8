import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked } from '../http/asked';
import { found } from '../http/told';
import { PLANT } from '../tokens';

@Controller()
export class DataPlatesController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.dataPlate)
  async dataPlate(@Asked() { params }: Question<'serial'>): Promise<AnswerOf<'dataPlate'>> {
    return found(await this.plant.asks.dataPlate(params.serial), 'serial', params.serial);
  }
}
