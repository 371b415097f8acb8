import type { AnswerOf, BodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Feed, FeedRefusal, Plant, Subscription } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked, SentBody, WhoAsks } from '../http/asked';
import type { Door } from '../http/door';
import { Problem } from '../http/problem';
import { found } from '../http/told';
import type { Who } from '../http/who';
import { DOOR, FEED, PLANT } from '../tokens';
import { letterAnswer, subscriptionAnswer } from './feed-answer';

@Controller()
export class FeedController {
  constructor(
    @Inject(FEED) private readonly feed: Feed,
    @Inject(PLANT) private readonly plant: Plant,
    @Inject(DOOR) private readonly door: Door,
  ) {}

  @Answers(ROUTES.feed)
  async list(): Promise<AnswerOf<'feed'>> {
    const [subscriptions, letters, head, people] = await Promise.all([
      this.feed.subscriptions(),
      this.feed.letters(),
      this.plant.head(),
      this.plant.people(),
    ]);
    const names = new Map(people.map(({ person, name }) => [person, name]));
    const targets = new Map(subscriptions.map(({ id, target }) => [id, target]));
    return {
      hasMail: this.feed.hasMail,
      subscriptions: subscriptions.map((one) => subscriptionAnswer(one, head, names)),
      letters: letters.map((one) => letterAnswer(one, targets)),
    };
  }

  @Answers(ROUTES.feedSubscription)
  async subscribe(
    @SentBody() wish: BodyOf<'feedSubscription'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'feedSubscription'>> {
    const { events, checkpoints } = wish.wants;
    if (events.length > 0 || checkpoints) assertAdministrator(me.roles);
    const made = await this.feed.subscribe(wish, me.actor);
    if (!made.ok) throw refused(made.why);
    await this.door.access.notes.note({
      type: 'FeedSubscribed',
      data: { account: me.actor, subscription: made.id, to: hostOf(wish), wants: wantedIn(wish.wants) },
    });
    return { subscription: made.id, secret: made.secret };
  }

  @Answers(ROUTES.feedEnd)
  async end(
    @Asked() { params }: Question<'subscription'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'feedEnd'>> {
    const { id } = await this.own(params.subscription, me.roles);
    await this.door.access.notes.note({
      type: 'FeedEnded',
      data: { account: me.actor, subscription: id },
    });
    await this.feed.end(id);
    return { done: true };
  }

  @Answers(ROUTES.feedTest)
  async test(
    @Asked() { params }: Question<'subscription'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'feedTest'>> {
    const tried = await this.feed.test(await this.own(params.subscription, me.roles));
    return { delivered: tried.ok, why: tried.ok ? null : tried.why };
  }

  @Answers(ROUTES.feedTryNow)
  async tryNow(
    @Asked() { params }: Question<'subscription'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'feedTryNow'>> {
    const { id } = await this.own(params.subscription, me.roles);
    await this.feed.tryNow(id);
    return { done: true };
  }

  @Answers(ROUTES.feedSendAgain)
  async sendAgain(@Asked() { params: { letter } }: Question<'letter'>): Promise<AnswerOf<'feedSendAgain'>> {
    const tried = found(await this.feed.sendAgain(letter), 'letter', letter);
    return { delivered: tried.ok, why: tried.ok ? null : tried.why };
  }

  @Answers(ROUTES.feedDrop)
  async drop(@Asked() { params: { letter } }: Question<'letter'>): Promise<AnswerOf<'feedDrop'>> {
    const known = (await this.feed.letters()).find(({ id }) => id === letter);
    await this.feed.dropLetter(found(known, 'letter', letter).id);
    return { done: true };
  }

  /** Whoever may not make a subscription of this kind may not end or test it either. */
  private async own(id: string, roles: readonly string[]): Promise<Subscription> {
    const known = (await this.feed.subscriptions()).find((one) => one.id === id);
    const subscription = found(known, 'subscription', id);
    if (subscription.wants.events.length > 0 || subscription.wants.checkpoints) assertAdministrator(roles);
    return subscription;
  }
}

const assertAdministrator = (roles: readonly string[]): void => {
  if (roles.includes('administrator')) return;
  throw new Problem({
    status: 403,
    code: 'role-missing',
    title: 'Your role does not allow this',
    detail: 'Events of the record and checkpoints are sent out by an administrator only.',
  });
};

const REFUSALS: { readonly [W in FeedRefusal]: string } = {
  'not-a-web-address': 'must be a web address without name, password and #part',
  'own-network':
    "is in this server's own network; an administrator opens it with STUDBOOK_FEED_NETWORKS where the server is started",
  'tls-needed': 'must begin with https://; only addresses in STUDBOOK_FEED_NETWORKS may do without',
  'no-mail-server': 'cannot be written to: no mail server is set (STUDBOOK_SMTP_URL)',
};

const refused = (why: FeedRefusal): Problem =>
  new Problem({
    status: 422,
    code: `feed-${why}`,
    title: 'Nothing can be sent there',
    detail: `The address ${REFUSALS[why]}.`,
    errors: [{ pointer: '#/target', detail: REFUSALS[why] }],
  });

/** An address may say who somebody is, and its path may be a secret: the host is enough to say where news went. */
const hostOf = ({ kind, target }: BodyOf<'feedSubscription'>): string =>
  kind === 'mail' ? 'mail' : new URL(target).host;

const wantedIn = ({ events, ...kinds }: BodyOf<'feedSubscription'>['wants']): readonly string[] => [
  ...(events === 'all' ? ['all'] : events),
  ...Object.entries(kinds).flatMap(([kind, wanted]) => (wanted ? [kind] : [])),
];
