import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Telling } from '../http/asked';
import { Told } from '../http/asked';
import { recorded } from '../http/told';
import { PLANT } from '../tokens';

@Controller()
export class LabelLogController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.labelLog)
  labelLog(): Promise<AnswerOf<'labelLog'>> {
    return this.plant.asks.labelLog();
  }

  @Answers(ROUTES.labelSupply)
  labelSupply(@Told() told: Telling<'labelSupply'>): Promise<AnswerOf<'labelSupply'>> {
    return recorded(this.plant.tell.labelSupply(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.labelVoid)
  labelVoid(@Told() told: Telling<'labelVoid'>): Promise<AnswerOf<'labelVoid'>> {
    return recorded(this.plant.tell.labelVoid(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.labelReclaim)
  labelReclaim(@Told() told: Telling<'labelReclaim'>): Promise<AnswerOf<'labelReclaim'>> {
    return recorded(this.plant.tell.labelReclaim(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.labelReplacement)
  labelReplacement(@Told() told: Telling<'labelReplacement'>): Promise<AnswerOf<'labelReplacement'>> {
    return recorded(this.plant.tell.labelReplacement(told.body, told.sender, told.params));
  }
}
