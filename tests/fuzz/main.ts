import { parseArgs } from 'node:util';
import { fuzz } from './run';

/** What issue and ASVS ask for; `--requests` for a shorter or a longer run, `--seed` to do one again. */
const REQUESTS = 100_000;

const main = async (): Promise<void> => {
  const { values } = parseArgs({
    options: { requests: { type: 'string' }, seed: { type: 'string' } },
  });
  const requests = Number(values.requests ?? REQUESTS);
  const seed = Number(values.seed ?? Date.now() % 1_000_000_000);
  if (!Number.isSafeInteger(requests) || requests < 1 || !Number.isSafeInteger(seed))
    throw new Error('--requests and --seed are whole numbers');

  const said = (line: string): void => {
    process.stdout.write(`${line}\n`);
  };
  said(`seed ${String(seed)}`);
  const { found, statuses, operations } = await fuzz({ requests, seed }, said);
  const total = Object.values(statuses).reduce((sum, count) => sum + count, 0);
  said(`${String(total)} requests to ${String(operations)} operations`);
  for (const [status, count] of Object.entries(statuses).sort()) said(`  ${status}  ${String(count)}`);
  for (const { fault, request, answer } of found) said(`\n${fault}\n  ${request}\n  ${answer}`);
  said(found.length === 0 ? 'nothing found' : `${String(found.length)} findings`);
  if (found.length > 0) process.exitCode = 1;
};

main().catch((fault: unknown) => {
  process.stderr.write(`${fault instanceof Error ? (fault.stack ?? fault.message) : String(fault)}\n`);
  process.exitCode = 1;
});
