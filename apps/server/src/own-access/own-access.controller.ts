import type { AnswerOf, BodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import { Controller, Inject, Req } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { Answers } from '../http/answers';
import { SentBody, WhoAsks } from '../http/asked';
import { assertPassword } from '../http/assert-password';
import type { Door } from '../http/door';
import { passkeySiteOf } from '../http/passkey-site';
import { assertProven } from '../http/proven';
import { Problem } from '../http/problem';
import type { Who } from '../http/who';
import type { Setting } from '../tokens';
import { DOOR, SETTING } from '../tokens';

/** What one signs in with. Whoever sits down at an open session still has to show who they are. */
@Controller()
export class OwnAccessController {
  constructor(
    @Inject(DOOR) private readonly door: Door,
    @Inject(SETTING) private readonly setting: Setting,
  ) {}

  @Answers(ROUTES.ownAccess)
  async show(@WhoAsks() { me }: Who, @Req() { headers }: FastifyRequest): Promise<AnswerOf<'ownAccess'>> {
    const { access } = this.door;
    const [factors, offers] = [await access.factorsOf(me.actor), await access.offers()];
    const has = (kind: string): boolean => factors.some((factor) => factor.kind === kind);
    return {
      pin: offers.some(({ person }) => person === me.actor),
      password: has('password'),
      codes: has('code'),
      recoveryLeft: factors.filter(({ kind }) => kind === 'recovery').length,
      passkeys: factors
        .filter(({ kind }) => kind === 'passkey')
        .map(({ id, name, madeAt, used }) => ({
          id,
          name,
          madeAt: new Date(madeAt).toISOString(),
          usedAt: used === 0 ? null : new Date(used).toISOString(),
        })),
      passkeysHere: passkeySiteOf(this.setting.origin, headers.host) !== undefined,
    };
  }

  @Answers(ROUTES.ownPassword)
  async choose(
    @SentBody() { password, ...shown }: BodyOf<'ownPassword'>,
    @WhoAsks() who: Who,
    @Req() request: FastifyRequest,
  ): Promise<AnswerOf<'ownPassword'>> {
    assertPassword(password, [who.me.name, who.me.actor]);
    await assertProven(this.door, { request, who, shown });
    await this.door.access.setPassword(who.me.actor, password, who.secret);
    return { done: true };
  }

  @Answers(ROUTES.codes)
  async begin(
    @SentBody() shown: BodyOf<'codes'>,
    @WhoAsks() who: Who,
    @Req() request: FastifyRequest,
  ): Promise<AnswerOf<'codes'>> {
    await assertProven(this.door, { request, who, shown });
    return this.door.access.beginCodes(who.me.actor, who.me.name);
  }

  @Answers(ROUTES.codesConfirm)
  async confirm(
    @SentBody() { code }: BodyOf<'codesConfirm'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'codesConfirm'>> {
    const recovery = await this.door.access.confirmCodes(me.actor, code);
    if (recovery === undefined) throw wrongFirstCode();
    return { recovery: [...recovery] };
  }

  @Answers(ROUTES.codesEnd)
  async end(
    @SentBody() shown: BodyOf<'codesEnd'>,
    @WhoAsks() who: Who,
    @Req() request: FastifyRequest,
  ): Promise<AnswerOf<'codesEnd'>> {
    await assertProven(this.door, { request, who, shown });
    await this.door.access.endFactors(who.me.actor, ['code', 'recovery'], who.me.actor);
    return { done: true };
  }
}

const wrongFirstCode = (): Problem =>
  new Problem({
    status: 422,
    code: 'code-not-right',
    title: 'That code is not one of this application now',
    detail: 'Look whether the clock of the phone is right, and type the code that shows now.',
    errors: [{ pointer: '#/code', detail: 'is not right now' }],
  });
