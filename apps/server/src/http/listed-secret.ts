import type { AnswerOf } from '@libs/contracts';
import type { Listed } from '@libs/plant';

/** A session or a token as the screens list it. */
export const listedSecret = ({
  kind: _kind,
  madeAt,
  seenAt,
  expiresAt,
  scopes,
  ...secret
}: Listed): AnswerOf<'sessions'>['sessions'][number] => ({
  ...secret,
  madeAt: new Date(madeAt).toISOString(),
  seenAt: new Date(seenAt).toISOString(),
  scopes: scopes === null ? null : [...scopes],
  expiresAt: expiresAt === null ? null : new Date(expiresAt).toISOString(),
});
