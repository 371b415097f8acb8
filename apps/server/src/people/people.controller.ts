import { createHash } from 'node:crypto';
import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Question, Telling } from '../http/asked';
import { Asked, Told, WhoAsks } from '../http/asked';
import type { Door } from '../http/door';
import { found } from '../http/told';
import type { Who } from '../http/who';
import { DOOR, PLANT } from '../tokens';
import { newPin } from './new-pin';

@Controller()
export class PeopleController {
  constructor(
    @Inject(PLANT) private readonly plant: Plant,
    @Inject(DOOR) private readonly door: Door,
  ) {}

  @Answers(ROUTES.people)
  async list(): Promise<AnswerOf<'people'>> {
    const [people, offers] = await Promise.all([this.plant.people(), this.door.access.offers()]);
    const letIn = new Set(offers.map(({ person }) => person));
    return {
      people: people.map(({ roles, stations, ...person }) => ({
        ...person,
        roles: [...roles],
        stations: [...stations],
        signsIn: letIn.has(person.person),
      })),
    };
  }

  @Answers(ROUTES.person)
  async enroll(@Told() { body, sender }: Telling<'person'>): Promise<AnswerOf<'person'>> {
    const { person = idFor(sender.key), ...rest } = body;
    const offers = await this.door.access.offers();
    const before = (await this.plant.people()).find((one) => one.person === person);
    await this.plant.enroll({ person, ...rest }, sender);
    this.door.rosterChanged();
    // Other roles, other rights: no session outlives the change (ASVS 5.0, 7.2.4).
    if (before !== undefined && !sameRoles(before.roles, rest.roles))
      await this.door.access.endSessions(person, sender.actor);
    if (offers.some((offer) => offer.person === person)) return { person, pin: null };

    return { person, pin: await this.givePin(person, sender.actor) };
  }

  @Answers(ROUTES.personPin)
  async renew(
    @Asked() { params }: Question<'person'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'personPin'>> {
    await this.enrolled(params.person);
    await this.door.access.endSessions(params.person, me.actor);
    return { pin: await this.givePin(params.person, me.actor) };
  }

  @Answers(ROUTES.leaving)
  async leave(@Told() { params, sender }: Telling<'leaving'>): Promise<AnswerOf<'leaving'>> {
    const { person = '' } = params;
    await this.door.access.withdraw(person, sender.actor);
    found((await this.plant.leave(person, sender)) || undefined, 'person', person);
    this.door.rosterChanged();
    return { done: true };
  }

  @Answers(ROUTES.erasure)
  async erase(@Told() { params, sender }: Telling<'erasure'>): Promise<AnswerOf<'erasure'>> {
    const { person = '' } = params;
    await this.door.access.withdraw(person, sender.actor);
    found((await this.plant.erase(person, sender)) || undefined, 'person', person);
    this.door.rosterChanged();
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

  private async givePin(person: string, by: string): Promise<string> {
    const pin = newPin();
    await this.door.access.addPerson(person, pin, { by });
    return pin;
  }
}

const sameRoles = (one: readonly string[], other: readonly string[]): boolean =>
  one.length === other.length && one.every((role) => other.includes(role));

/** The same request sent again enrolls the same person. */
const idFor = (key: string): string => `p-${createHash('sha256').update(key).digest('hex').slice(0, 8)}`;
