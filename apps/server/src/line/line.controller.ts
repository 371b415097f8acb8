import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked } from '../http/asked';
import { PLANT } from '../tokens';

/** What a lead means by "the line": sections that are on it, or pulled off it and to come back. */
const ON_AND_OFF_THE_LINE = 'on-line,pulled';

@Controller()
export class LineController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.line)
  show(@Asked() { query }: Question): Promise<AnswerOf<'line'>> {
    return this.plant.asks.line((query.stage ?? ON_AND_OFF_THE_LINE).split(','));
  }
}
