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
export class SectionsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.section)
  async show(@Asked() { params, query }: Question<'serial'>): Promise<AnswerOf<'section'>> {
    return found(await this.plant.asks.section(params.serial, query.at ?? null), 'serial', params.serial);
  }
}
