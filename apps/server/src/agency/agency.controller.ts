import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Question, Telling } from '../http/asked';
import { Asked, Told } from '../http/asked';
import { recorded } from '../http/told';
import { PLANT } from '../tokens';

@Controller()
export class AgencyController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.agency)
  agency(): Promise<AnswerOf<'agency'>> {
    return this.plant.asks.agency();
  }

  @Answers(ROUTES.agencyReport)
  agencyReport(@Asked() { query }: Question<never, 'month'>): Promise<AnswerOf<'agencyReport'>> {
    return this.plant.asks.agencyReport(query.month);
  }

  @Answers(ROUTES.visit)
  visit(@Told() told: Telling<'visit'>): Promise<AnswerOf<'visit'>> {
    return recorded(this.plant.tell.visit(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.stageSeen)
  stageSeen(@Told() told: Telling<'stageSeen'>): Promise<AnswerOf<'stageSeen'>> {
    return recorded(this.plant.tell.stageSeen(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.observation)
  observation(@Told() told: Telling<'observation'>): Promise<AnswerOf<'observation'>> {
    return recorded(this.plant.tell.observation(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.observationAnswer)
  observationAnswer(@Told() told: Telling<'observationAnswer'>): Promise<AnswerOf<'observationAnswer'>> {
    return recorded(this.plant.tell.observationAnswer(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.observationClosing)
  observationClosing(@Told() told: Telling<'observationClosing'>): Promise<AnswerOf<'observationClosing'>> {
    return recorded(this.plant.tell.observationClosing(told.body, told.sender, told.params));
  }
}
