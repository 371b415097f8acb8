import { useEffect } from 'react';

/** Not among what a station waits for: fetched once its screen stands, so that it is here when the network is not. */
export const photosModule = () => import('./photo-taking');

const send = (): void => void photosModule().then(({ sendPhotosAgain }) => sendPhotosAgain());

/** Brings photos that wait on this device to the server: now, and whenever the network is back. */
export const useWaitingPhotos = (): void => {
  useEffect(() => {
    send();
    window.addEventListener('online', send);
    return () => window.removeEventListener('online', send);
  }, []);
};
