import type { Which } from '@libs/plant';

/** A proposal where one is named, else the revision, else the latest. */
export const whichOf = ({ revision, proposal }: { readonly [name: string]: string | undefined }): Which =>
  proposal === undefined ? { revision: revision === undefined ? null : Number(revision) } : { proposal };

/** What was asked for, for whoever is told that it is not there. */
export const nameOf = ({ revision, proposal }: { readonly [name: string]: string | undefined }): string =>
  proposal ?? revision ?? 'the latest';
