/** HttpOnly: no script reads it. Strict: no other site sends it, so no form elsewhere can act for a lead. */
const GUARDED = 'Path=/; HttpOnly; SameSite=Strict';
const SESSION = 'studbook_session';
const TABLET = 'studbook_tablet';
/** As long as browsers keep a cookie at all; the plant ends it, not the calendar. */
const TABLET_SECONDS = 400 * 24 * 3_600;

/** Over TLS the browser itself holds the name to this very host and to Secure (RFC 6265bis, 4.1.3.2). */
const named = (name: string, secure: boolean): string => (secure ? `__Host-${name}` : name);
const tail = (secure: boolean): string => (secure ? '; Secure' : '');

export const sessionCookie = (session: string, expiresAt: number, secure: boolean): string =>
  `${named(SESSION, secure)}=${session}; ${GUARDED}; Expires=${new Date(expiresAt).toUTCString()}${tail(secure)}`;

export const endedCookie = (secure: boolean): string =>
  `${named(SESSION, secure)}=; ${GUARDED}; Max-Age=0${tail(secure)}`;

export const tabletCookie = (secret: string, secure: boolean): string =>
  `${named(TABLET, secure)}=${secret}; ${GUARDED}; Max-Age=${String(TABLET_SECONDS)}${tail(secure)}`;

/** Lax: it has to come back along with somebody whom the provider sends. It opens nothing. */
const CARRIED = 'Path=/; HttpOnly; SameSite=Lax';
const STATE = 'studbook_state';
const STATE_SECONDS = 600;

export const stateCookie = (state: string, secure: boolean): string =>
  `${named(STATE, secure)}=${state}; ${CARRIED}; Max-Age=${String(STATE_SECONDS)}${tail(secure)}`;
export const endedState = (secure: boolean): string =>
  `${named(STATE, secure)}=; ${CARRIED}; Max-Age=0${tail(secure)}`;
export const stateIn = (header: string | undefined, secure: boolean): string | undefined =>
  cookieIn(header, named(STATE, secure));

const cookieIn = (header: string | undefined, name: string): string | undefined =>
  header
    ?.split(';')
    .map((pair) => pair.trim())
    .find((pair) => pair.startsWith(`${name}=`))
    ?.slice(name.length + 1);

export const sessionIn = (header: string | undefined, secure: boolean): string | undefined =>
  cookieIn(header, named(SESSION, secure));
export const tabletIn = (header: string | undefined, secure: boolean): string | undefined =>
  cookieIn(header, named(TABLET, secure));
