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
export class ContainmentsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.containments)
  containments(): Promise<AnswerOf<'containments'>> {
    return this.plant.asks.containments();
  }

  @Answers(ROUTES.sharing)
  async sharing(@Asked() { query }: Question<never, 'serial' | 'operation'>): Promise<AnswerOf<'sharing'>> {
    const { serial, operation, from = null, to = null } = query;
    return found(await this.plant.asks.sharing(serial, operation, { from, to }), 'serial', serial);
  }

  @Answers(ROUTES.containment)
  containment(@Told() told: Telling<'containment'>): Promise<AnswerOf<'containment'>> {
    return recorded(this.plant.tell.containment(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.containedLook)
  containedLook(@Told() told: Telling<'containedLook'>): Promise<AnswerOf<'containedLook'>> {
    return recorded(this.plant.tell.containedLook(told.body, told.sender, told.params));
  }
}
