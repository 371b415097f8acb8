import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Setting } from '../tokens';
import { PLANT, SETTING } from '../tokens';

@Controller()
export class HealthController {
  constructor(
    @Inject(PLANT) private readonly plant: Plant,
    @Inject(SETTING) private readonly setting: Setting,
  ) {}

  @Answers(ROUTES.health)
  async show(): Promise<AnswerOf<'health'>> {
    const { ledger, engine } = this.setting;
    const status = (await this.plant.writes()) ? 'ready' : 'stepped-down';
    return { status, ledger, head: await this.plant.head(), engine };
  }
}
