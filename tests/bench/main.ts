import { parseArgs } from 'node:util';
import { measure } from './bench';
import type { Result, Row } from './bench';
import { ROWS } from './rows';

const DEFAULT_SIZE = '20000';

const HELP = `Measures Studbook beside something outside of it, by turns, in one run.

  --only NAME    this row alone (may be given several times)
  --size EVENTS  how many events a round (default ${DEFAULT_SIZE})
  --json         as JSON: {rows:[{name, ours, peer, peerName, unit, ratio}]}
  --list         the rows there are
`;

const options = {
  only: { type: 'string', multiple: true },
  size: { type: 'string' },
  json: { type: 'boolean' },
  list: { type: 'boolean' },
  help: { type: 'boolean' },
} as const;

const inLine = ({ name, ours, peer, peerName, unit, ratio, goal, met }: Result): string =>
  `${name.padEnd(20)} ${rounded(ours).padStart(9)} ${unit.padEnd(10)} ${peerName}: ${rounded(peer)}; ` +
  `ratio ${ratio.toFixed(2)} (goal ${goal}${met ? ', met' : ', NOT met'})`;

const rounded = (figure: number): string => (figure >= 100 ? figure.toFixed(0) : figure.toFixed(2));

// What a measured library says of itself must not stand among the figures.
console.log = console.error;

const main = async (): Promise<void> => {
  const { values } = parseArgs({ options });
  if (values.help === true) return void process.stdout.write(HELP);
  if (values.list === true) return void process.stdout.write(ROWS.map(({ name }) => `${name}\n`).join(''));

  const chosen = rowsNamed(values.only ?? []);
  const size = sizeOf(values.size ?? DEFAULT_SIZE);
  const rows: Result[] = [];
  for (const row of chosen) {
    const result = await measure(row, size);
    rows.push(result);
    if (values.json !== true) process.stdout.write(`${inLine(result)}\n`);
  }
  if (values.json === true) process.stdout.write(`${JSON.stringify({ rows }, null, 2)}\n`);
};

const rowsNamed = (only: readonly string[]): readonly Row[] => {
  const unknown = only.filter((name) => ROWS.every((row) => row.name !== name));
  if (unknown.length > 0) throw new Error(`--only: there is no row ${unknown.join(', ')}; --list shows them`);
  return only.length === 0 ? ROWS : ROWS.filter(({ name }) => only.includes(name));
};

const sizeOf = (given: string): number => {
  const size = Number(given);
  if (!Number.isInteger(size) || size < 1) throw new Error(`--size: ${given} is not a number of events`);
  return size;
};

main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
  process.exitCode = 1;
});
