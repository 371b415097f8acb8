import { z } from 'zod';

/** What a photo may be: what cameras make and browsers show. */
export const PHOTO_MEDIA = ['image/jpeg', 'image/png', 'image/webp'] as const;

/** `photo` is the name by which work, a defect or a claim speaks of it. */
export const PhotoAnswer = z.object({
  photo: z.string().describe('SHA-256 of the photo as it is kept: without what says where it was taken'),
  type: z.enum(PHOTO_MEDIA),
  bytes: z.number().int(),
});
/** The bytes of a picture. */
export const PhotoBytes = z.unknown().meta({ description: 'The picture' });
