import { addressOf } from './paths';

/** Taken on this page: shown from here, also where the server has it not yet. */
const justTaken = new Map<string, string>();

export const showFromHere = (photo: string, picture: Blob): void => {
  justTaken.set(photo, URL.createObjectURL(picture));
};
export const addressOfPhoto = (photo: string): string =>
  justTaken.get(photo) ?? addressOf('photoBytes', { photo }).path;
