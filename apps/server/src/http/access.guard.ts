import type { Access, Route } from '@libs/contracts';
import { inScopes, ROUTES } from '@libs/contracts';
import type { CanActivate, ExecutionContext } from '@nestjs/common';
import { Inject, Injectable } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { DOOR } from '../tokens';
import { routeOf } from './answers';
import { bearerIn } from './bearer';
import type { Door } from './door';
import { idempotencyKey } from './idempotency-key';
import { otherSite, scopeMissing, signatureNeeded, unknownHere, wrongRole } from './kept-out';
import type { Who } from './who';
import { rememberWho } from './who';

const NAMES: ReadonlyMap<Route, string> = new Map(
  Object.entries<Route>(ROUTES).map(([name, route]) => [route, name]),
);

/** Nothing is answered without a session or a token, but what the table of routes opens to anyone. */
@Injectable()
export class AccessGuard implements CanActivate {
  constructor(@Inject(DOOR) private readonly door: Door) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const route = routeOf(context.getHandler());
    const request = context.switchToHttp().getRequest<FastifyRequest>();
    if (route.method === 'POST' && comesFromElsewhere(request)) throw otherSite();
    if (route.access === 'anyone') return true;

    const who = await this.whoSends(request);
    if (who === undefined) throw unknownHere();
    this.assertMay(route, who);
    rememberWho(request, this.signed(route, request, who));
    return true;
  }

  private assertMay(route: Route, { me, scopes }: Who): void {
    const { access, method, path } = route;
    const name = NAMES.get(route) ?? '';
    const inScope = scopes === null || inScopes(scopes, { name, method });
    if (mayUse(access, me.roles) && inScope) return;
    this.door.access.notes.entryRefused(me.actor, `${method} ${path}`);
    throw inScope ? wrongRole(access, me.roles) : scopeMissing(scopes);
  }

  /** An approval is taken only with a signature given for it, by a person. */
  private signed({ signed, signedWhen }: Route, { body, headers }: FastifyRequest, who: Who): Who {
    if (signed === undefined || signedWhen?.(body) === false) return who;
    const key = idempotencyKey(headers['idempotency-key']);
    const signature = this.door.signatures.signatureFor(who.secret, key);
    if (signature === undefined) throw signatureNeeded();
    return { ...who, signature: { ...signature, meaning: signed } };
  }

  private async whoSends({ headers }: FastifyRequest): Promise<Who | undefined> {
    const token = bearerIn(headers.authorization);
    const secret = token ?? this.door.sessionIn(headers.cookie);
    const who = secret === undefined ? undefined : await this.door.whoIs(secret);
    // A session goes by its cookie alone, a token by its header: neither is taken in the other's place.
    return (token === undefined) === (who?.assurance === 'session') ? who : undefined;
  }
}

/** Browsers say where a request comes from, and no script can say otherwise; programs say nothing. */
const comesFromElsewhere = ({ headers }: FastifyRequest): boolean =>
  headers['sec-fetch-site'] === 'cross-site' || headers['sec-fetch-site'] === 'same-site';

const mayUse = (access: Access, roles: readonly string[]): boolean =>
  typeof access === 'string' || access.some((role) => roles.includes(role));
