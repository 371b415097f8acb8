import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Answers, Streams } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked } from '../http/asked';
import { againstOf, filterOf, spanOf } from '../http/span';
import { PLANT } from '../tokens';

/** Days: a season, by which most first claims are made (common practice, no published source). */
const FIELD_AGE = 90;

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

  @Answers(ROUTES.field)
  field(@Asked() { query }: Question): Promise<AnswerOf<'field'>> {
    return this.plant.asks.field(Number(query.age ?? FIELD_AGE));
  }

  @Streams(ROUTES.weeklyReport)
  async report(@Asked() { query }: Question, @Res() reply: FastifyReply): Promise<void> {
    const language = query.language === 'es' ? 'es' : 'en';
    const { to, bytes } = await this.plant.asks.weeklyReport(query.to ?? null, language);
    await reply
      .header('content-type', 'application/pdf')
      .header('content-disposition', `attachment; filename="quality-${to}.pdf"`)
      .send(Buffer.from(bytes));
  }
}
