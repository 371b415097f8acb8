import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { BodyOf } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Question, Telling } from '../http/asked';
import { Asked, SentBody, Told } from '../http/asked';
import { found, recorded } from '../http/told';
import { PLANT } from '../tokens';
import { nameOf, whichOf } from './which';

@Controller()
export class RulebookController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.rulebook)
  async read(@Asked() { query }: Question): Promise<AnswerOf<'rulebook'>> {
    return found(await this.plant.rulebook.book(whichOf(query)), 'revision', nameOf(query));
  }

  @Answers(ROUTES.rulebookFiles)
  async files(@Asked() { query }: Question): Promise<AnswerOf<'rulebookFiles'>> {
    return found(await this.plant.rulebook.files(whichOf(query)), 'revision', nameOf(query));
  }

  @Answers(ROUTES.nuisance)
  nuisance(): Promise<AnswerOf<'nuisance'>> {
    return this.plant.rulebook.nuisance();
  }

  @Answers(ROUTES.examination)
  examine(@SentBody() { files }: BodyOf<'examination'>): Promise<AnswerOf<'examination'>> {
    return this.plant.rulebook.examine(files);
  }

  @Answers(ROUTES.revisionPreview)
  async preview(@Asked() { params, query }: Question<'serial'>): Promise<AnswerOf<'revisionPreview'>> {
    const revision = query.revision === undefined ? null : Number(query.revision);
    return found(await this.plant.rulebook.preview(params.serial, revision), 'serial', params.serial);
  }

  @Answers(ROUTES.revisionApplication)
  apply(@Told() told: Telling<'revisionApplication'>): Promise<AnswerOf<'revisionApplication'>> {
    return recorded(this.plant.rulebook.apply(told.params['serial'] ?? '', told.body, told.sender));
  }

  @Answers(ROUTES.orderPreview)
  async previewOrder(
    @Asked() { params }: Question<'serial'>,
    @SentBody() body: BodyOf<'orderPreview'>,
  ): Promise<AnswerOf<'orderPreview'>> {
    return found(await this.plant.rulebook.previewOrder(params.serial, body), 'serial', params.serial);
  }

  @Answers(ROUTES.buildPlan)
  async buildPlan(@Asked() { params }: Question<'serial'>): Promise<AnswerOf<'buildPlan'>> {
    return found(await this.plant.rulebook.buildPlan(params.serial), 'serial', params.serial);
  }
}
