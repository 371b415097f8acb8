import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Door } from '../http/door';
import { DOOR, PLANT } from '../tokens';

@Controller()
export class SignInsController {
  constructor(
    @Inject(DOOR) private readonly door: Door,
    @Inject(PLANT) private readonly plant: Plant,
  ) {}

  @Answers(ROUTES.signIns)
  async list(): Promise<AnswerOf<'signIns'>> {
    const { demonstration } = await this.plant.asks.plant();
    const shown = new Map((await this.door.access.offers()).map((offer) => [offer.person, offer.shown]));
    const people = (await this.plant.people()).filter(({ person }) => shown.has(person));

    return {
      people: people.map(({ person, name, roles }) => ({
        person,
        name,
        roles: [...roles],
        pin: demonstration ? (shown.get(person) ?? null) : null,
      })),
    };
  }
}
