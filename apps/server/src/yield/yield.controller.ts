import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked } from '../http/asked';
import { againstOf, filterOf, spanOf } from '../http/span';
import { PLANT } from '../tokens';

@Controller()
export class YieldController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.yield)
  byStation(@Asked() { query }: Question): Promise<AnswerOf<'yield'>> {
    return this.plant.asks.yieldByStation(spanOf(query), filterOf(query), againstOf(query));
  }

  @Answers(ROUTES.yieldTrend)
  trend(@Asked() { query }: Question<never, 'station'>): Promise<AnswerOf<'yieldTrend'>> {
    return this.plant.asks.yieldTrend(query.station, spanOf(query));
  }

  @Answers(ROUTES.passages)
  passages(@Asked() { query }: Question<never, 'station'>): Promise<AnswerOf<'passages'>> {
    return this.plant.asks.passages(query.station, query.which ?? 'left', spanOf(query), filterOf(query));
  }
}
