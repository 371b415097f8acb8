import type { AnswerOf, BodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked, SentBody, WhoAsks } from '../http/asked';
import type { Door } from '../http/door';
import { found } from '../http/told';
import type { Who } from '../http/who';
import { DOOR, PLANT } from '../tokens';

/** Links for people without an account, as a quality manager makes and ends them. */
@Controller()
export class IssuedLinksController {
  constructor(
    @Inject(PLANT) private readonly plant: Plant,
    @Inject(DOOR) private readonly door: Door,
  ) {}

  @Answers(ROUTES.links)
  async list(@Asked() { params: { serial } }: Question<'serial'>): Promise<AnswerOf<'links'>> {
    const out = await this.door.access.linksOf(await this.homeOf(serial));
    return {
      links: out.map(({ madeAt, until, openedAt, ...link }) => ({
        ...link,
        madeAt: isoOf(madeAt),
        until: isoOf(until),
        openedAt: openedAt === null ? null : isoOf(openedAt),
      })),
    };
  }

  @Answers(ROUTES.linkIssue)
  async issue(
    @Asked() { params: { serial } }: Question<'serial'>,
    @SentBody() wish: BodyOf<'linkIssue'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'linkIssue'>> {
    const home = await this.homeOf(serial);
    const { until, ...made } = await this.door.access.issueLink({ home, ...wish }, me.actor);
    return { ...made, until: isoOf(until) };
  }

  @Answers(ROUTES.linkEnd)
  async end(
    @Asked() { params: { serial, link } }: Question<'serial' | 'link'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'linkEnd'>> {
    const ended = await this.door.access.endLink(await this.homeOf(serial), link, me.actor);
    return found(ended ? { done: true } : undefined, 'link', link);
  }

  /** A section's serial stands for its home. */
  private async homeOf(serial: string): Promise<string> {
    return found(await this.plant.asks.section(serial, null), 'serial', serial).home;
  }
}

const isoOf = (ms: number): string => new Date(ms).toISOString();
