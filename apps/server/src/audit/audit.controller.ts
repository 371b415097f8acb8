import { randomBytes } from 'node:crypto';
import type { AnswerOf, BodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import { SentBody, WhoAsks } from '../http/asked';
import type { Door } from '../http/door';
import { Problem } from '../http/problem';
import type { Who } from '../http/who';
import { DOOR, PLANT } from '../tokens';

@Controller()
export class AuditController {
  constructor(
    @Inject(PLANT) private readonly plant: Plant,
    @Inject(DOOR) private readonly door: Door,
  ) {}

  @Answers(ROUTES.sample)
  async draw(@SentBody() wish: BodyOf<'sample'>, @WhoAsks() { me }: Who): Promise<AnswerOf<'sample'>> {
    if (wish.from > wish.to) throw spanBackwards();
    const seed = wish.seed ?? randomBytes(8).toString('hex');
    const sample = await this.plant.asks.auditSample({ ...wish, seed });
    if (sample === null) throw lotTooSmall();

    const { plan, homes, ...drawn } = sample;
    const { accept } = plan;
    await this.door.access.notes.note({
      type: 'SampleDrawn',
      data: { account: me.actor, ...drawn, accept, homes },
    });
    return { ...drawn, ...plan, homes: [...homes] };
  }
}

const spanBackwards = (): Problem =>
  new Problem({
    status: 400,
    code: 'span-backwards',
    title: 'The span ends before it begins',
    errors: [{ pointer: '#/to', detail: 'is before `from`' }],
  });

const lotTooSmall = (): Problem =>
  new Problem({
    status: 422,
    code: 'lot-too-small',
    title: 'Fewer than two homes were labelled on these days',
    detail: 'There is no sampling plan for a lot of none or one. Take a longer span.',
    errors: [{ pointer: '#/from', detail: 'the lot is too small' }],
  });
