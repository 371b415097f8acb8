#!/usr/bin/env node
import 'reflect-metadata';
import { Command } from 'commander';
import { version } from '../../../package.json';
import { checkpointCommand } from './commands/checkpoint';
import { demoCommand } from './commands/demo';
import { eraseCommand } from './commands/erase';
import { exportCommand } from './commands/export';
import { historyCommand } from './commands/history';
import { homesCommand } from './commands/homes';
import { importCommand } from './commands/import';
import { issueCommand } from './commands/issue';
import { personCommand } from './commands/person';
import { rebuildCommand } from './commands/rebuild';
import { retroCheckCommand } from './commands/retro-check';
import { serveCommand } from './commands/serve';
import { tokenCommand } from './commands/token';
import { exposureCommand, traceCommand } from './commands/trace';
import { verifyCommand } from './commands/verify';
import { explained } from './composition/explained';
import { EXIT } from './exit-code';

const program = new Command('studbook')
  .description('The record of how each home was built.')
  .version(version)
  .addCommand(serveCommand())
  .addCommand(demoCommand())
  .addCommand(issueCommand())
  .addCommand(retroCheckCommand())
  .addCommand(importCommand())
  .addCommand(historyCommand())
  .addCommand(homesCommand())
  .addCommand(exportCommand())
  .addCommand(traceCommand())
  .addCommand(exposureCommand())
  .addCommand(verifyCommand())
  .addCommand(checkpointCommand())
  .addCommand(rebuildCommand())
  .addCommand(personCommand())
  .addCommand(eraseCommand())
  .addCommand(tokenCommand())
  .addHelpText(
    'after',
    `
Begin here:
  studbook demo && studbook serve      a plant with a year of invented history
  studbook history H26-1003-A          how one home was built
  studbook export H26-1003 --out p.zip  its packet: the history and all that proves it
  studbook verify p.zip                what a packet proves, with no plant at hand
  studbook issue --help                issue your own rulebook
  studbook import --help               bring your own history in

Exit codes: 0 done, 1 failed (the reason is on stderr), 2 import: some rows were refused.
A plant in PostgreSQL: set DATABASE_URL.`,
  );

program.parseAsync().catch((error: unknown) => {
  process.stderr.write(`${explained(error)}\n`);
  process.exitCode = EXIT.failed;
});
