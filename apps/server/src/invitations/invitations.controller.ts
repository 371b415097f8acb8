import type { AnswerOf, BodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Answers } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked, SentBody, WhoAsks } from '../http/asked';
import { assertPassword } from '../http/assert-password';
import type { Door } from '../http/door';
import { Problem } from '../http/problem';
import { sessionCookie } from '../http/session-cookie';
import { found } from '../http/told';
import type { Who } from '../http/who';
import type { Setting } from '../tokens';
import { DOOR, PLANT, SETTING } from '../tokens';

/** How somebody comes by a password without anybody else knowing it, and what an administrator may say of others. */
@Controller()
export class InvitationsController {
  constructor(
    @Inject(PLANT) private readonly plant: Plant,
    @Inject(DOOR) private readonly door: Door,
    @Inject(SETTING) private readonly setting: Setting,
  ) {}

  @Answers(ROUTES.invitation)
  async invite(
    @Asked() { params: { person } }: Question<'person'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'invitation'>> {
    await this.enrolled(person);
    const { code, until } = await this.door.access.invite(person, me.actor);
    return { code, until: new Date(until).toISOString() };
  }

  @Answers(ROUTES.invitationTaken)
  async take(
    @SentBody() { code, password }: BodyOf<'invitationTaken'>,
    @Req() { headers }: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AnswerOf<'invitationTaken'>> {
    const { access, sessionIn, stepOf, whoIs } = this.door;
    // Before the code is used up: whoever chose badly chooses again.
    assertPassword(password, []);
    const person = await access.takeInvitation(code);
    if (person === undefined) throw wrongCode();
    await access.setPassword(person, password);
    const { tablet } = await stepOf(headers.cookie);
    const outcome = await access.letIn(person, 'invitation', { tablet, replaces: sessionIn(headers.cookie) });
    const who = await whoIs(outcome.session);
    if (who === undefined) throw wrongCode();
    reply.header('set-cookie', sessionCookie(outcome.session, outcome.expiresAt, this.setting.secureCookies));
    return { me: who.me };
  }

  @Answers(ROUTES.factorsEnd)
  async lost(
    @Asked() { params: { person } }: Question<'person'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'factorsEnd'>> {
    await this.enrolled(person);
    await this.door.access.endFactors(person, ['code', 'code-unconfirmed', 'recovery', 'passkey'], me.actor);
    await this.door.access.endSessions(person, me.actor);
    return { done: true };
  }

  @Answers(ROUTES.providerLink)
  async link(
    @Asked() { params: { person } }: Question<'person'>,
    @SentBody() { subject }: BodyOf<'providerLink'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'providerLink'>> {
    await this.enrolled(person);
    await this.door.access.linkProvider(person, subject, me.actor);
    return { done: true };
  }

  private async enrolled(person: string): Promise<void> {
    const people = await this.plant.people();
    found(
      people.find((one) => one.person === person),
      'person',
      person,
    );
  }
}

const wrongCode = (): Problem =>
  new Problem({
    status: 401,
    code: 'invitation-wrong',
    title: 'That code invites nobody',
    detail: 'Each works once, for three days. Ask an administrator for another.',
    errors: [{ pointer: '#/code', detail: 'is no open invitation' }],
  });
