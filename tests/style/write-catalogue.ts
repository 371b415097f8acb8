import { writeFileSync } from 'node:fs';
import { CATALOGUE, catalogue } from './event-catalogue';
import { table, TABLE_FILE } from './who-may';

for (const [file, text] of [
  [CATALOGUE, catalogue()],
  [TABLE_FILE, table()],
] as const) {
  writeFileSync(file, text);
  process.stdout.write(`Wrote ${file}\n`);
}
