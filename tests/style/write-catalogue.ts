import { writeFileSync } from 'node:fs';
import { CATALOGUE, catalogue } from './event-catalogue';

writeFileSync(CATALOGUE, catalogue());
process.stdout.write(`Wrote ${CATALOGUE}\n`);
