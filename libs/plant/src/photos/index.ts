export { EXTENSIONS, photosIn } from './photo';
export type { Photo, PhotoRefusal } from './photo';
export { photoStore } from './photo-store';
export type { PhotoStore } from './photo-store';
export { photosOf } from './photos';
export type { Photos } from './photos';
