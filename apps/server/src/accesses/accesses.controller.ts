import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { JsonObject } from '@libs/kernel';
import type { AccessLog, Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked } from '../http/asked';
import { ACCESS_LOG, PLANT } from '../tokens';

/** A screenful and more. */
const PAGE = 200;

@Controller()
export class AccessesController {
  constructor(
    @Inject(ACCESS_LOG) private readonly log: AccessLog,
    @Inject(PLANT) private readonly plant: Plant,
  ) {}

  @Answers(ROUTES.accesses)
  async list(@Asked() { query }: Question): Promise<AnswerOf<'accesses'>> {
    await this.log.takeIn();
    const end = query.before === undefined ? (await this.log.head()) + 1 : Number(query.before);
    const after = Math.max(0, end - 1 - PAGE);
    const events = after >= end - 1 ? [] : await this.log.after(after, end - 1 - after);
    const names = new Map((await this.plant.people()).map(({ person, name }) => [person, name]));

    return {
      accesses: events.toReversed().map(({ position, occurredAt, schema, actor, data }) => ({
        position,
        at: occurredAt,
        type: schema.slice(0, schema.indexOf('/')),
        by: names.get(actor) ?? actor,
        account: accountIn(data, names),
        data: this.inClear(data),
      })),
      before: after === 0 ? null : after + 1,
    };
  }

  /** A stated reason is sealed under the key of whoever stated it. */
  private inClear(data: JsonObject): JsonObject {
    const { account, reason } = data;
    if (typeof account !== 'string' || typeof reason !== 'string') return data;
    return { ...data, reason: this.plant.statedReason.read(account, reason) };
  }
}

const accountIn = (
  { account }: { readonly [field: string]: unknown },
  names: ReadonlyMap<string, string>,
): string => names.get(String(account)) ?? String(account);
