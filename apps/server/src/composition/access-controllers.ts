import type { Type } from '@nestjs/common';
import { AccessesController } from '../accesses/accesses.controller';
import { ApiTokensController } from '../api-tokens/api-tokens.controller';
import { InvitationsController } from '../invitations/invitations.controller';
import { IssuedLinksController } from '../links/issued-links.controller';
import { LinkController } from '../links/link.controller';
import { OwnAccessController } from '../own-access/own-access.controller';
import { PasskeysController } from '../own-access/passkeys.controller';
import { PeopleController } from '../people/people.controller';
import { ProviderController } from '../provider/provider.controller';
import { SessionsController } from '../sessions/sessions.controller';
import { SetupController } from '../setup/setup.controller';
import { PasskeySignInController } from '../sign-in/passkey-sign-in.controller';
import { SignInController } from '../sign-in/sign-in.controller';
import { SignInsController } from '../sign-ins/sign-ins.controller';
import { SignOutController } from '../sign-out/sign-out.controller';
import { SignaturesController } from '../signatures/signatures.controller';
import { TabletsController } from '../tablets/tablets.controller';

/** Who may come in, and by what. */
export const ACCESS_CONTROLLERS: readonly Type[] = [
  AccessesController,
  ApiTokensController,
  InvitationsController,
  IssuedLinksController,
  LinkController,
  OwnAccessController,
  PasskeysController,
  PasskeySignInController,
  PeopleController,
  ProviderController,
  SessionsController,
  SetupController,
  SignaturesController,
  SignInController,
  SignInsController,
  SignOutController,
  TabletsController,
];
