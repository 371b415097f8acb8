import type { AnswerOf } from '@libs/contracts';
import { LIMITS, ROUTES } from '@libs/contracts';
import type { PhotoRefusal, Plant } from '@libs/plant';
import { Controller, Inject, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Answers, Streams } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked, SentBytes } from '../http/asked';
import { Problem } from '../http/problem';
import { found } from '../http/told';
import { PLANT } from '../tokens';

@Controller()
export class PhotosController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.photo)
  async keep(@SentBytes() bytes: Buffer): Promise<AnswerOf<'photo'>> {
    const kept = await Promise.resolve(this.plant.photos.keep(bytes));
    if (!kept.ok) throw refused(kept.why);
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

const TITLES: { readonly [why in PhotoRefusal]: string } = {
  'photo-empty': 'There is nothing in it',
  'photo-too-large': `It is larger than ${String(LIMITS.photoBytes)} bytes`,
  'photo-not-a-picture': 'It is no JPEG, PNG or WebP picture, whatever its name says',
  'photo-broken': 'It is cut short or damaged: it does not read to its end',
};

const refused = (why: PhotoRefusal): Problem =>
  new Problem({
    status: 422,
    code: why,
    title: 'This photo cannot be kept',
    detail: TITLES[why],
    errors: [{ pointer: '#', detail: TITLES[why] }],
  });
