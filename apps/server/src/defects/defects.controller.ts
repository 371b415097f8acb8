import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Question, Telling } from '../http/asked';
import { Asked, Told } from '../http/asked';
import { spanOf } from '../http/span';
import { recorded } from '../http/told';
import { PLANT } from '../tokens';

@Controller()
export class DefectsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.defectCounts)
  counts(@Asked() { query }: Question): Promise<AnswerOf<'defectCounts'>> {
    const only = {
      station: query.station ?? null,
      class: query.class ?? 'nonconformance',
      weigh: query.weigh ?? 'count',
    };
    return this.plant.asks.defectCounts(query.by ?? 'code', only, spanOf(query));
  }

  @Answers(ROUTES.defects)
  list(@Asked() { query }: Question): Promise<AnswerOf<'defects'>> {
    const { station = null, serial = null, component = null, symptom = null } = query;
    const { operation = null, crew = null, lot = null } = query;
    return this.plant.asks.defects(
      { station, serial, component, symptom, operation, crew, lot, class: query.class ?? null },
      spanOf(query),
    );
  }

  @Answers(ROUTES.openDefects)
  open(@Asked() { query }: Question): Promise<AnswerOf<'openDefects'>> {
    return this.plant.asks.openDefects(query.class ?? null);
  }

  @Answers(ROUTES.defect)
  record(@Told() told: Telling<'defect'>): Promise<AnswerOf<'defect'>> {
    return recorded(this.plant.tell.defect(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.rework)
  rework(@Told() told: Telling<'rework'>): Promise<AnswerOf<'rework'>> {
    return recorded(this.plant.tell.rework(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.verification)
  verify(@Told() told: Telling<'verification'>): Promise<AnswerOf<'verification'>> {
    return recorded(this.plant.tell.verification(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.closing)
  close(@Told() told: Telling<'closing'>): Promise<AnswerOf<'closing'>> {
    return recorded(this.plant.tell.closing(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.cause)
  revise(@Told() told: Telling<'cause'>): Promise<AnswerOf<'cause'>> {
    return recorded(this.plant.tell.cause(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.disposition)
  dispose(@Told() told: Telling<'disposition'>): Promise<AnswerOf<'disposition'>> {
    return recorded(this.plant.tell.disposition(told.body, told.sender, told.params));
  }
}
