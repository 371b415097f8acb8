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
export class InstrumentsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.instrumentReach)
  async reach(@Asked() { params }: Question<'instrument'>): Promise<AnswerOf<'instrumentReach'>> {
    return found(await this.plant.asks.instrumentReach(params.instrument), 'instrument', params.instrument);
  }
}
