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
export class HomesController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.homes)
  list(@Asked() { query }: Question): Promise<AnswerOf<'homes'>> {
    return this.plant.asks.homes(
      query.search ?? '',
      query.most === undefined ? undefined : Number(query.most),
    );
  }

  @Answers(ROUTES.history)
  async history(@Asked() { params }: Question<'serial'>): Promise<AnswerOf<'history'>> {
    return found(await this.plant.asks.history(params.serial), 'serial', params.serial);
  }

  @Answers(ROUTES.home)
  order(@Told() told: Telling<'home'>): Promise<AnswerOf<'home'>> {
    return recorded(this.plant.tell.home(told.body, told.sender, told.params));
  }
}
