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
export class ChartsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.signals)
  signals(@Asked() { query }: Question): Promise<AnswerOf<'signals'>> {
    return this.plant.asks.signals(spanOf(query));
  }

  @Answers(ROUTES.stationChart)
  stationChart(@Asked() { query, params }: Question<'station'>): Promise<AnswerOf<'stationChart'>> {
    return this.plant.asks.stationChart(params.station, spanOf(query));
  }

  @Answers(ROUTES.chartNote)
  chartNote(@Told() told: Telling<'chartNote'>): Promise<AnswerOf<'chartNote'>> {
    return recorded(this.plant.tell.chartNote(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.baseline)
  baseline(@Told() told: Telling<'baseline'>): Promise<AnswerOf<'baseline'>> {
    return recorded(this.plant.tell.baseline(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.acknowledgement)
  acknowledgement(@Told() told: Telling<'acknowledgement'>): Promise<AnswerOf<'acknowledgement'>> {
    return recorded(this.plant.tell.acknowledgement(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.alarmBudget)
  alarmBudget(@Told() told: Telling<'alarmBudget'>): Promise<AnswerOf<'alarmBudget'>> {
    return recorded(this.plant.tell.alarmBudget(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.defectCosts)
  defectCosts(@Told() told: Telling<'defectCosts'>): Promise<AnswerOf<'defectCosts'>> {
    return recorded(this.plant.tell.defectCosts(told.body, told.sender, told.params));
  }
}
