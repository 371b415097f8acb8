import { ROLES, ROUTES } from '@libs/contracts';
import { mayFind, mayTell } from '../../apps/web/src/session/may';

const may = (
  route: 'work' | 'move' | 'rework' | 'defect' | 'hold' | 'verification',
  role: string,
): boolean => {
  const { access } = ROUTES[route];
  return typeof access === 'string' || access.some((one) => one === role);
};
const people = ROLES.filter((role) => role !== 'machine');

describe('what a station offers', () => {
  it.each(people)('to %s is what the server takes from that role', (role) => {
    const me = { roles: [role] };
    expect(['work', 'move', 'rework'].map(() => mayTell(me))).toStrictEqual(
      (['work', 'move', 'rework'] as const).map((route) => may(route, role)),
    );
    expect(['defect', 'hold', 'verification'].map(() => mayFind(me))).toStrictEqual(
      (['defect', 'hold', 'verification'] as const).map((route) => may(route, role)),
    );
  });

  it('to an auditor is nothing to tell', () => {
    expect([mayTell({ roles: ['auditor'] }), mayFind({ roles: ['auditor'] })]).toStrictEqual([false, false]);
  });
});
