import { createHmac } from 'node:crypto';
import type { AnswerOf, BodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { OpenedLink, Plant, Sender } from '@libs/plant';
import { Controller, Inject, Req } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { Answers } from '../http/answers';
import { SentBody, SentBytes } from '../http/asked';
import { bearerIn } from '../http/bearer';
import type { Door } from '../http/door';
import { idempotencyKey } from '../http/idempotency-key';
import { Problem } from '../http/problem';
import { found, recorded } from '../http/told';
import { photoRefused } from '../http/photo-refused';
import { DOOR, PLANT } from '../tokens';

/** For whoever holds a link. Which home it is about comes with the token alone, and is never asked for. */
@Controller()
export class LinkController {
  constructor(
    @Inject(PLANT) private readonly plant: Plant,
    @Inject(DOOR) private readonly door: Door,
  ) {}

  @Answers(ROUTES.linkBook)
  async book(
    @Req() request: FastifyRequest,
    @SentBody() _: BodyOf<'linkBook'>,
  ): Promise<AnswerOf<'linkBook'>> {
    const { home, purpose, until } = await this.opened(request, ['owner', 'owner-with-defects']);
    const book = await this.plant.asks.buildBook(home, purpose === 'owner-with-defects');
    return { ...found(book, 'home', home), until: new Date(until).toISOString() };
  }

  @Answers(ROUTES.linkSite)
  async site(
    @Req() request: FastifyRequest,
    @SentBody() _: BodyOf<'linkSite'>,
  ): Promise<AnswerOf<'linkSite'>> {
    const { home, until } = await this.opened(request, ['installer']);
    const work = await this.plant.asks.siteWork(home);
    return { ...found(work, 'home', home), until: new Date(until).toISOString() };
  }

  @Answers(ROUTES.linkWork)
  async work(
    @Req() request: FastifyRequest,
    @SentBody() { name, ...body }: BodyOf<'linkWork'>,
  ): Promise<AnswerOf<'linkWork'>> {
    const link = await this.opened(request, ['installer']);
    const key = idempotencyKey(request.headers['idempotency-key']);
    const site = found(await this.plant.asks.siteWork(link.home), 'home', link.home);
    const card = site.operations.find(({ operation }) => operation === body.operation);
    if (card === undefined) throw notAtTheSite(body.operation);

    const actor = await this.signerOf(link, { name, crew: card.crew, station: card.station }, request);
    const work = {
      ...{ serial: link.home, via: 'tablet' as const, station: card.station },
      ...{ proof: 'signed' as const, except: [], lots: [], crew: card.crew },
      ...body,
    };
    return recorded(this.plant.tell.work(work, { ...senderOf(link, key), actor }, {}));
  }

  @Answers(ROUTES.linkPhoto)
  async photo(@Req() request: FastifyRequest, @SentBytes() bytes: Buffer): Promise<AnswerOf<'linkPhoto'>> {
    await this.opened(request, ['installer']);
    const kept = this.plant.photos.keep(bytes);
    if (!kept.ok) throw photoRefused(kept.why);
    const { photo, type, bytes: size } = kept;
    return { photo, type, bytes: size };
  }

  private async opened(
    { headers }: FastifyRequest,
    purposes: Parameters<Door['access']['openLink']>[1],
  ): Promise<OpenedLink> {
    const token = bearerIn(headers.authorization);
    const link = token === undefined ? undefined : await this.door.access.openLink(token, purposes);
    if (link === undefined) throw opensNothing();
    return link;
  }

  /**
   * Whoever signs is enrolled by the name they gave, so that it is sealed like every name. Their id is made with the
   * link's own secret: nobody finds out a name by trying ids, and the same name on another link is somebody else.
   */
  private async signerOf(
    link: OpenedLink,
    { name, crew, station }: { readonly name: string; readonly crew: string; readonly station: string },
    { headers }: FastifyRequest,
  ): Promise<string> {
    const person = `installer-${createHmac('sha256', bearerIn(headers.authorization) ?? '')
      .update(name)
      .digest('hex')
      .slice(0, ID_DIGITS)}`;
    const people = await this.plant.people();
    if (!people.some((known) => known.person === person)) {
      const newPerson = { person, name, roles: ['station-lead'], crew, stations: [station] };
      await this.plant.enroll(newPerson, senderOf(link, person));
      this.door.rosterChanged();
    }
    return person;
  }
}

/** As many as keep two names apart: 2^64. */
const ID_DIGITS = 16;

/** Keys are the link's own: no other sender's entry is answered by one. */
const senderOf = ({ link }: OpenedLink, key: string): Sender => ({
  key: `${link}/${key}`,
  actor: link,
  assurance: 'token',
});

/** The same for every link that opens nothing here: whoever tries learns nothing. */
const opensNothing = (): Problem =>
  new Problem({
    status: 401,
    code: 'link-opens-nothing',
    title: 'This link opens nothing',
    detail: 'It may be incomplete, over, or ended. Ask whoever sent it for another.',
    headers: { 'www-authenticate': 'Bearer realm="studbook"' },
  });

const notAtTheSite = (operation: string): Problem =>
  new Problem({
    status: 422,
    code: 'not-site-work',
    title: 'That is no work of this home at its site',
    errors: [{ pointer: '#/operation', detail: `${operation} is not done at the site of this home` }],
  });
