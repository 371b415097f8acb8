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
export class ClaimsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.claims)
  claims(): Promise<AnswerOf<'claims'>> {
    return this.plant.asks.claims();
  }

  @Answers(ROUTES.claim)
  async claim(@Asked() { params }: Question<'claim'>): Promise<AnswerOf<'claim'>> {
    return found(await this.plant.asks.claim(params.claim), 'claim', params.claim);
  }

  @Answers(ROUTES.trace)
  async trace(@Asked() { params }: Question<'claim'>): Promise<AnswerOf<'trace'>> {
    return found(await this.plant.asks.trace(params.claim), 'claim', params.claim);
  }

  @Answers(ROUTES.exposure)
  async exposure(@Asked() { query }: Question<never, 'claim' | 'cause'>): Promise<AnswerOf<'exposure'>> {
    const method = query['method'] === 'exact' ? 'exact' : 'whole-group';
    const { claim, cause } = query;
    return found(await this.plant.asks.exposure(claim, cause, method), 'cause', cause);
  }

  @Answers(ROUTES.complaint)
  complaint(@Told() told: Telling<'complaint'>): Promise<AnswerOf<'complaint'>> {
    return recorded(this.plant.tell.complaint(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.dismissal)
  dismissal(@Told() told: Telling<'dismissal'>): Promise<AnswerOf<'dismissal'>> {
    return recorded(this.plant.tell.dismissal(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.claimOpening)
  claimOpening(@Told() told: Telling<'claimOpening'>): Promise<AnswerOf<'claimOpening'>> {
    return recorded(this.plant.tell.claimOpening(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.asFound)
  asFound(@Told() told: Telling<'asFound'>): Promise<AnswerOf<'asFound'>> {
    return recorded(this.plant.tell.asFound(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.claimDecision)
  claimDecision(@Told() told: Telling<'claimDecision'>): Promise<AnswerOf<'claimDecision'>> {
    return recorded(this.plant.tell.claimDecision(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.causeConfirmation)
  causeConfirmation(@Told() told: Telling<'causeConfirmation'>): Promise<AnswerOf<'causeConfirmation'>> {
    return recorded(this.plant.tell.causeConfirmation(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.delivery)
  delivery(@Told() told: Telling<'delivery'>): Promise<AnswerOf<'delivery'>> {
    return recorded(this.plant.tell.delivery(told.body, told.sender, told.params));
  }
}
