#!/usr/bin/env node
import 'reflect-metadata';
import { Command } from 'commander';
import { demoCommand } from './commands/demo';
import { historyCommand } from './commands/history';
import { importCommand } from './commands/import';
import { issueCommand } from './commands/issue';
import { personCommand } from './commands/person';
import { rebuildCommand } from './commands/rebuild';
import { serveCommand } from './commands/serve';
import { tokenCommand } from './commands/token';
import { explained } from './composition/explained';
import { EXIT } from './exit-code';

const program = new Command('studbook')
  .description('The record of how each home was built.')
  .addCommand(serveCommand())
  .addCommand(demoCommand())
  .addCommand(issueCommand())
  .addCommand(importCommand())
  .addCommand(historyCommand())
  .addCommand(rebuildCommand())
  .addCommand(personCommand())
  .addCommand(tokenCommand())
  .addHelpText(
    'after',
    `
Begin here:
  studbook demo && studbook serve      a plant with a year of invented history
  studbook history H26-1003-A          how one home was built
  studbook issue --help                issue your own rulebook
  studbook import --help               bring your own history in

Exit codes: 0 done, 1 failed (the reason is on stderr), 2 import: some rows were refused.
A plant in PostgreSQL: set DATABASE_URL.`,
  );

program.parseAsync().catch((error: unknown) => {
  process.stderr.write(`${explained(error)}\n`);
  process.exitCode = EXIT.failed;
});
