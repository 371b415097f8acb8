import { PERSONAL_ROLES } from '../access';
import { PHOTO_MEDIA, PhotoAnswer, PhotoBytes } from '../photo';
import { TELLERS, get } from './route';
import type { Getting } from './route';

/** Photos go in first; what is told then names them. The same photo sent twice is one photo. */
const photo: Getting<typeof PhotoAnswer> = {
  method: 'POST',
  path: '/api/photos',
  summary: 'Keep a photo; what is told then names it by its SHA-256',
  access: [...TELLERS, 'agency-inspector'],
  takes: PHOTO_MEDIA,
  answer: PhotoAnswer,
  status: 201,
  keyed: false,
};

export const photoRoutes = {
  photo,
  photoBytes: get('/api/photos/{photo}', 'A photo, by its SHA-256', PhotoBytes, {
    access: PERSONAL_ROLES,
    media: 'image/*',
  }),
} as const;
