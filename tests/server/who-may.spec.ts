import type { Route } from '@libs/contracts';
import { PLANT_TELLINGS, ROLES, ROUTES } from '@libs/contracts';
import request from 'supertest';
import { openTestServer } from '../support/server';
import type { TestServer } from '../support/server';
import { table, TABLE_FILE } from '../style/who-may';
import { readFileSync } from 'node:fs';

const routes = Object.entries<Route>(ROUTES).filter(([, { access }]) => access !== 'anyone');
const cells = routes.flatMap(([name, route]) =>
  ROLES.map((role) => ({
    name,
    role,
    route,
    may: typeof route.access === 'string' || route.access.includes(role),
  })),
);
const addressOf = ({ path }: Route): string => path.replace(/\{\w+\}/g, 'x-1');

describe('who may do what', () => {
  let server: TestServer;
  const tokens = new Map<string, string>();
  beforeAll(async () => {
    server = await openTestServer();
    for (const role of ROLES) {
      const made = await server.post('/api/tokens', { role, name: `a ${role}` }, { by: 'administrator' });
      tokens.set(role, made.body.token);
    }
  });
  afterAll(() => server.clear());

  it.each(cells.filter(({ route }) => route.media === undefined))(
    'is as the table says: $name for $role',
    async ({ role, route, may }) => {
      const to = request(server.address);
      const asked =
        route.method === 'GET'
          ? to.get(addressOf(route))
          : to.post(addressOf(route)).set('idempotency-key', `${role}-1`).send({ nothing: 'known' });
      const { status, body } = await asked.set('authorization', `Bearer ${tokens.get(role) ?? ''}`);

      expect(status).not.toBe(401);
      expect(status).toBeLessThan(500);
      // What is let through is refused for its content, or answered; never for who sends it.
      if (may) expect(body.code).not.toBe('role-missing');
      else expect({ status, code: body.code }).toStrictEqual({ status: 403, code: 'role-missing' });
    },
  );

  it('lets an auditor tell the plant nothing', () => {
    const told = routes
      .filter(([name]) => PLANT_TELLINGS.has(name))
      .filter(([, { access }]) => typeof access === 'string' || access.includes('auditor'));
    expect(told.map(([name]) => name)).toStrictEqual([]);
  });

  it('is written down for people to read, and current', () => {
    expect(readFileSync(TABLE_FILE, 'utf8')).toBe(table());
  });
});
