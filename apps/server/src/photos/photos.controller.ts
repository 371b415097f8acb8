import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Answers, Streams } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked, SentBytes } from '../http/asked';
import { found } from '../http/told';
import { PLANT } from '../tokens';
import { photoRefused } from '../http/photo-refused';

@Controller()
export class PhotosController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.photo)
  async keep(@SentBytes() bytes: Buffer): Promise<AnswerOf<'photo'>> {
    const kept = await Promise.resolve(this.plant.photos.keep(bytes));
    if (!kept.ok) throw photoRefused(kept.why);
    const { photo, type, bytes: size } = kept;
    return { photo, type, bytes: size };
  }

  /** Under its own hash nothing else can ever stand: whoever has it need not ask again. */
  @Streams(ROUTES.photoBytes)
  async show(@Asked() { params }: Question<'photo'>, @Res() reply: FastifyReply): Promise<void> {
    const { type, bytes } = found(this.plant.photos.read(params.photo), 'photo', params.photo);
    await reply
      .header('content-type', type)
      .header('cache-control', 'private, max-age=31536000, immutable')
      .header('content-disposition', 'inline')
      .send(Buffer.from(bytes));
  }
}
