import type { Access } from '@libs/contracts';
import type { CanActivate, ExecutionContext } from '@nestjs/common';
import { Inject, Injectable } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { DOOR } from '../tokens';
import { routeOf } from './answers';
import type { Door } from './door';
import { Problem } from './problem';
import { sessionIn } from './session-cookie';
import type { Who } from './who';
import { rememberWho } from './who';

/** Nothing is answered without a session or a token, but what the table of routes opens to anyone. */
@Injectable()
export class AccessGuard implements CanActivate {
  constructor(@Inject(DOOR) private readonly door: Door) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const { access, method, path } = routeOf(context.getHandler());
    if (access === 'anyone') return true;

    const request = context.switchToHttp().getRequest<FastifyRequest>();
    const who = await this.whoSends(request);
    if (who === undefined) throw unknownHere();
    if (!mayUse(access, who.me.roles)) {
      this.door.access.notes.entryRefused(who.me.actor, `${method} ${path}`);
      throw wrongRole(access, who.me.roles);
    }

    rememberWho(request, who);
    return true;
  }

  private async whoSends({ headers }: FastifyRequest): Promise<Who | undefined> {
    const secret = bearer(headers.authorization) ?? sessionIn(headers.cookie);
    return secret === undefined ? undefined : this.door.whoIs(secret);
  }
}

const bearer = (header: string | undefined): string | undefined => /^Bearer +(\S+)$/i.exec(header ?? '')?.[1];

const mayUse = (access: Access, roles: readonly string[]): boolean =>
  typeof access === 'string' || access.some((role) => roles.includes(role));

const unknownHere = (): Problem =>
  new Problem({
    status: 401,
    code: 'sign-in-needed',
    title: 'Sign in first',
    detail: 'Send the session cookie of POST /api/sign-in, or a token as Authorization: Bearer.',
    headers: { 'www-authenticate': 'Bearer realm="studbook"' },
  });

const wrongRole = (access: Access, roles: readonly string[]): Problem =>
  new Problem({
    status: 403,
    code: 'role-missing',
    title: 'Your role may not do this',
    detail: `It takes one of: ${typeof access === 'string' ? access : access.join(', ')}. Yours: ${roles.join(', ') || 'none'}.`,
  });
