import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Question, Telling } from '../http/asked';
import { Asked, Told } from '../http/asked';
import { found, recorded } from '../http/told';
import { PLANT } from '../tokens';

@Controller()
export class LotsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.lot)
  receive(@Told() told: Telling<'lot'>): Promise<AnswerOf<'lot'>> {
    return recorded(this.plant.tell.lot(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.quarantine)
  quarantine(@Told() told: Telling<'quarantine'>): Promise<AnswerOf<'quarantine'>> {
    return recorded(this.plant.tell.quarantine(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.lotRelease)
  release(@Told() told: Telling<'lotRelease'>): Promise<AnswerOf<'lotRelease'>> {
    return recorded(this.plant.tell.lotRelease(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.lotReach)
  async reach(@Asked() { params }: Question<'lot'>): Promise<AnswerOf<'lotReach'>> {
    return found(await this.plant.asks.lotReach(params.lot), 'lot', params.lot);
  }
}
