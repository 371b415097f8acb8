import { join } from 'node:path';
import type { Route } from '@libs/contracts';
import { ROLES, ROUTES } from '@libs/contracts';

export const TABLE_FILE = join(__dirname, '..', '..', 'libs', 'contracts', 'src', 'WHO-MAY.md');

const HEAD = `# Who may do what

Made from the table of routes by \`npm run catalogue\`; \`tests/server/who-may.spec.ts\` tries every cell against a real
server. Whatever is not in the table is refused. A person has one or more of these roles, a program one.

`;

const mark = ({ access }: Route, role: string): string =>
  typeof access === 'string' || access.includes(role) ? 'yes' : '';
const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |\n`;

/** Every route against every role, as the server itself looks it up. */
export const table = (): string =>
  HEAD +
  row(['route', 'for', 'anyone', ...ROLES]) +
  row(Array.from({ length: 3 + ROLES.length }, () => '---')) +
  Object.values<Route>(ROUTES)
    .map((route) =>
      row([
        `\`${route.method} ${route.path}\``,
        route.summary,
        route.access === 'anyone' ? 'yes' : '',
        ...ROLES.map((role) => mark(route, role)),
      ]),
    )
    .join('');
