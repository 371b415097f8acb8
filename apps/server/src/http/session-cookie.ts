const NAME = 'studbook_session';
/** HttpOnly: no script reads it. Strict: no other site sends it, so no form elsewhere can act for a lead. */
const GUARDED = 'Path=/; HttpOnly; SameSite=Strict';

export const sessionCookie = (session: string, expiresAt: number, secure: boolean): string =>
  `${NAME}=${session}; ${GUARDED}; Expires=${new Date(expiresAt).toUTCString()}${secure ? '; Secure' : ''}`;

export const endedCookie = (): string => `${NAME}=; ${GUARDED}; Max-Age=0`;

export const sessionIn = (header: string | undefined): string | undefined =>
  header
    ?.split(';')
    .map((pair) => pair.trim())
    .find((pair) => pair.startsWith(`${NAME}=`))
    ?.slice(NAME.length + 1);
