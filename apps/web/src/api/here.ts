/** Not among what a station waits for: it is fetched once its screen stands, and kept by the service worker. */
export const hereModule = () => import('../offline/answers');
