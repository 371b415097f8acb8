import type { AccountEvent } from './account.events';

/** It has happened already; nothing can be refused any more. */
export type AccountCommand = { readonly type: 'NoteAccess'; readonly data: AccountEvent };
