import { LIMITS } from '@libs/contracts';
import type { PhotoRefusal } from '@libs/plant';
import { Problem } from './problem';

const TITLES: { readonly [why in PhotoRefusal]: string } = {
  'photo-empty': 'There is nothing in it',
  'photo-too-large': `It is larger than ${String(LIMITS.photoBytes)} bytes`,
  'photo-not-a-picture': 'It is no JPEG, PNG or WebP picture, whatever its name says',
  'photo-broken': 'It is cut short or damaged: it does not read to its end',
};

export const photoRefused = (why: PhotoRefusal): Problem =>
  new Problem({
    status: 422,
    code: why,
    title: 'This photo cannot be kept',
    detail: TITLES[why],
    errors: [{ pointer: '#', detail: TITLES[why] }],
  });
