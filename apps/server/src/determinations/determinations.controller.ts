import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Answers, Streams } from '../http/answers';
import type { Question, Telling } from '../http/asked';
import { Asked, Told } from '../http/asked';
import { found, recorded } from '../http/told';
import { PLANT } from '../tokens';

@Controller()
export class DeterminationsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.determinations)
  determinations(): Promise<AnswerOf<'determinations'>> {
    return this.plant.asks.determinations();
  }

  @Answers(ROUTES.determination)
  async determination(@Asked() { params }: Question<'determination'>): Promise<AnswerOf<'determination'>> {
    const { determination } = params;
    return found(await this.plant.asks.determination(determination), 'determination', determination);
  }

  @Streams(ROUTES.dueDays)
  async dueDays(@Res() reply: FastifyReply): Promise<void> {
    const calendar = await this.plant.asks.dueDays();
    await reply.header('content-type', 'text/calendar; charset=utf-8').send(calendar);
  }

  @Answers(ROUTES.determinationOpening)
  determinationOpening(
    @Told() told: Telling<'determinationOpening'>,
  ): Promise<AnswerOf<'determinationOpening'>> {
    return recorded(this.plant.tell.determinationOpening(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.initialDetermination)
  initialDetermination(
    @Told() told: Telling<'initialDetermination'>,
  ): Promise<AnswerOf<'initialDetermination'>> {
    return recorded(this.plant.tell.initialDetermination(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.classDetermination)
  classDetermination(@Told() told: Telling<'classDetermination'>): Promise<AnswerOf<'classDetermination'>> {
    return recorded(this.plant.tell.classDetermination(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.agencyPosition)
  agencyPosition(@Told() told: Telling<'agencyPosition'>): Promise<AnswerOf<'agencyPosition'>> {
    return recorded(this.plant.tell.agencyPosition(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.notification)
  notification(@Told() told: Telling<'notification'>): Promise<AnswerOf<'notification'>> {
    return recorded(this.plant.tell.notification(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.remedyPlan)
  remedyPlan(@Told() told: Telling<'remedyPlan'>): Promise<AnswerOf<'remedyPlan'>> {
    return recorded(this.plant.tell.remedyPlan(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.planApproval)
  planApproval(@Told() told: Telling<'planApproval'>): Promise<AnswerOf<'planApproval'>> {
    return recorded(this.plant.tell.planApproval(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.remedy)
  remedy(@Told() told: Telling<'remedy'>): Promise<AnswerOf<'remedy'>> {
    return recorded(this.plant.tell.remedy(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.completion)
  completion(@Told() told: Telling<'completion'>): Promise<AnswerOf<'completion'>> {
    return recorded(this.plant.tell.completion(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.countingRule)
  countingRule(@Told() told: Telling<'countingRule'>): Promise<AnswerOf<'countingRule'>> {
    return recorded(this.plant.tell.countingRule(told.body, told.sender, told.params));
  }
}
