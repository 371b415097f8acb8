import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import { Controller, Inject, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Answers, Streams } from '../http/answers';
import type { Door } from '../http/door';
import type { IdentityProvider } from '../http/identity-provider';
import { Problem } from '../http/problem';
import { endedState, sessionCookie, stateCookie, stateIn } from '../http/session-cookie';
import type { Setting } from '../tokens';
import { DOOR, PROVIDER, SETTING } from '../tokens';

/** Signing in through the plant's identity provider. Who may come in at all, an administrator has said before. */
@Controller()
export class ProviderController {
  constructor(
    @Inject(DOOR) private readonly door: Door,
    @Inject(SETTING) private readonly setting: Setting,
    @Inject(PROVIDER) private readonly provider: IdentityProvider | null,
  ) {}

  @Answers(ROUTES.provider)
  show(): Promise<AnswerOf<'provider'>> {
    return Promise.resolve({ name: this.provider?.name ?? null });
  }

  @Streams(ROUTES.providerBegin)
  async begin(@Res() reply: FastifyReply): Promise<void> {
    if (this.provider === null) throw noProvider();
    const { address, state } = await this.provider.begin();
    await reply
      .header('set-cookie', stateCookie(state, this.setting.secureCookies))
      .header('location', address)
      .status(302)
      .send();
  }

  @Streams(ROUTES.providerBack)
  async back(@Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    const { secureCookies } = this.setting;
    const state = stateIn(request.headers.cookie, secureCookies);
    if (this.provider === null || state === undefined) throw notHere();
    const subject = await this.provider.finish(request.url.split('?')[1] ?? '', state);
    const person = subject === undefined ? undefined : await this.door.access.providersPerson(subject);
    if (subject === undefined) throw notHere();
    if (person === undefined) throw notLinked(subject);
    await this.letIn(person, request, reply);
  }

  private async letIn(person: string, { headers }: FastifyRequest, reply: FastifyReply): Promise<void> {
    const { access, sessionIn, whoIs } = this.door;
    const { secureCookies } = this.setting;
    const outcome = await access.letIn(person, 'provider', { replaces: sessionIn(headers.cookie) });
    if ((await whoIs(outcome.session)) === undefined) throw notHere();
    // A page of ours goes on from here: the browser came from another site and sends no Strict cookie on a redirect.
    await reply
      .header('set-cookie', [
        sessionCookie(outcome.session, outcome.expiresAt, secureCookies),
        endedState(secureCookies),
      ])
      .header('content-type', 'text/html; charset=utf-8')
      .send('<!doctype html><meta http-equiv="refresh" content="0;url=/"><title>Studbook</title>');
  }
}

const noProvider = (): Problem =>
  new Problem({ status: 404, code: 'provider-none', title: 'This plant has no identity provider' });

const notHere = (): Problem =>
  new Problem({
    status: 401,
    code: 'provider-not-answered',
    title: 'The identity provider did not say who you are',
    detail: 'Begin again from the sign-in screen, in the same browser, and within ten minutes.',
  });

const notLinked = (subject: string): Problem =>
  new Problem({
    status: 403,
    code: 'provider-not-linked',
    title: 'Nobody here is linked with this account',
    detail: `Tell an administrator this name of your account: ${subject}`,
  });
