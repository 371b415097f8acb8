import type { PasskeySite } from '@libs/plant';
import { Problem } from './problem';

/** Browsers know no passkey for a bare address; `localhost` is the one name they take without TLS. */
const LOCAL = /^localhost(?::\d{1,5})?$/;

/** Where passkeys hold: the address this plant is set to, else localhost where that is what was asked. */
export const passkeySiteOf = (origin: string | null, host: string | undefined): PasskeySite | undefined => {
  if (origin !== null) return { name: new URL(origin).hostname, origin };
  return host !== undefined && LOCAL.test(host) ? { name: 'localhost', origin: `http://${host}` } : undefined;
};

export const passkeySiteNeeded = (origin: string | null, host: string | undefined): PasskeySite => {
  const site = passkeySiteOf(origin, host);
  if (site !== undefined) return site;
  throw new Problem({
    status: 409,
    code: 'passkeys-not-here',
    title: 'Passkeys need an address of their own',
    detail: 'Set STUDBOOK_ORIGIN to the https address people open, and open that one.',
  });
};
