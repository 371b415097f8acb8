/** The token of `Authorization: Bearer`. */
export const bearerIn = (header: string | undefined): string | undefined =>
  /^Bearer +(\S{1,200})$/i.exec(header ?? '')?.[1];
