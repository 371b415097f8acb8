/** The app's own service worker: it keeps the app's files, so that the app opens where there is no network. */

const ADDRESS = '/service-worker.js';
/** Often enough for a tablet that is never switched off. */
const LOOK_AGAIN_MS = 3_600_000;

/** A new version waits until no old page is open; a page that is just being opened has nothing to lose by it. */
const takeNew = (registration: ServiceWorkerRegistration): void => {
  registration.waiting?.postMessage('take over');
};

const register = async (): Promise<void> => {
  // The files of this page belong to the version before: it begins again with the new one's.
  if (navigator.serviceWorker.controller !== null)
    navigator.serviceWorker.addEventListener('controllerchange', () => window.location.reload(), {
      once: true,
    });
  const registration = await navigator.serviceWorker.register(ADDRESS, { type: 'module' });
  takeNew(registration);
  setInterval(() => void registration.update().catch(nobodyThere), LOOK_AGAIN_MS);
};

/** Browsers say TypeError where the file cannot be fetched: the one that is installed serves on. */
const nobodyThere = (fault: unknown): void => {
  if (!(fault instanceof TypeError)) throw fault;
};

/** Pages the browser does not trust (http from elsewhere) have none, and a development server has no list of files. */
export const registerWorker = (): void => {
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) return;
  window.addEventListener('load', () => void register().catch(nobodyThere));
};
