import { randomUUID } from 'node:crypto';
import type { AnswerOf, BodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Answers } from '../http/answers';
import { SentBody } from '../http/asked';
import { assertPassword } from '../http/assert-password';
import type { Door } from '../http/door';
import { Problem } from '../http/problem';
import { sessionCookie } from '../http/session-cookie';
import type { Setting } from '../tokens';
import { DOOR, PLANT, SETTING, SETUP } from '../tokens';
import type { Setup } from './setup';

@Controller()
export class SetupController {
  constructor(
    @Inject(SETUP) private readonly setup: Setup,
    @Inject(PLANT) private readonly plant: Plant,
    @Inject(DOOR) private readonly door: Door,
    @Inject(SETTING) private readonly setting: Setting,
  ) {}

  @Answers(ROUTES.setup)
  async needed(): Promise<AnswerOf<'setup'>> {
    return { needed: (await this.setup.code()) !== null };
  }

  @Answers(ROUTES.setUp)
  async setUp(
    @SentBody() { code, name, password }: BodyOf<'setUp'>,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AnswerOf<'setUp'>> {
    assertPassword(password, [name]);
    if (!(await this.setup.matches(code))) throw wrongCode();

    const person = `p-${randomUUID().slice(0, 8)}`;
    const me = { actor: person, name, roles: ['administrator'], crew: null, stations: [] };
    await this.plant.enroll(
      { person, name, roles: me.roles, crew: null, stations: [] },
      { key: randomUUID(), actor: person, assurance: 'session' },
    );
    this.door.rosterChanged();
    await this.door.access.setPassword(person, password);
    const { session, expiresAt } = await this.door.access.letIn(person, 'setup-code');
    reply.header('set-cookie', sessionCookie(session, expiresAt, this.setting.secureCookies));
    return { me };
  }
}

const wrongCode = (): Problem =>
  new Problem({
    status: 401,
    code: 'setup-code-wrong',
    title: 'That is not the code this server printed',
    detail: 'It stands where the server was started, and is another each time it starts.',
    errors: [{ pointer: '#/code', detail: 'is not the one printed' }],
  });
