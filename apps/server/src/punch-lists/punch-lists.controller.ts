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
export class PunchListsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.punchList)
  punchList(@Told() told: Telling<'punchList'>): Promise<AnswerOf<'punchList'>> {
    return recorded(this.plant.tell.punchList(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.punchSignature)
  punchSignature(@Told() told: Telling<'punchSignature'>): Promise<AnswerOf<'punchSignature'>> {
    return recorded(this.plant.tell.punchSignature(told.body, told.sender, told.params));
  }
}
