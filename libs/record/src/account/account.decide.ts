import { accept } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type { AccountCommand } from './account.commands';
import type { AccountEvent } from './account.events';

/** No decision ever reads it: who may come in is asked of the sign-ins themselves, which can be taken away. */
export type Account = { readonly [none: string]: never };

export const ACCOUNT: StreamKind<AccountCommand, Account, AccountEvent, never, Account> = {
  name: 'account',
  initial: {},
  decide: ({ data }): Decision<AccountEvent, never> => accept(data),
  evolve: (account) => account,
};
