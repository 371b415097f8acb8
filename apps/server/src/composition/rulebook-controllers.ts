import type { Type } from '@nestjs/common';
import { ProposalsController } from '../rulebook/proposals.controller';
import { RetroCheckController } from '../rulebook/retro-check.controller';
import { RulebookController } from '../rulebook/rulebook.controller';

/** The rulebook: read, changed, issued, run over history. */
export const RULEBOOK_CONTROLLERS: readonly Type[] = [
  ProposalsController,
  RetroCheckController,
  RulebookController,
];
