import type { AnswerOf } from '@libs/contracts';
import { openApi, ROUTES } from '@libs/contracts';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Setting } from '../tokens';
import { SETTING } from '../tokens';

@Controller()
export class OpenapiController {
  private document: AnswerOf<'openapi'> | undefined;

  constructor(@Inject(SETTING) private readonly setting: Setting) {}

  @Answers(ROUTES.openapi)
  show(): Promise<AnswerOf<'openapi'>> {
    this.document ??= openApi(this.setting.version);
    return Promise.resolve(this.document);
  }
}
