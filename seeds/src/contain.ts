import { tell } from './flow';
import type { Flow } from './flow';
import type { Section } from './section-state';
import { telling } from './telling';
import { anotherInspector, later } from './world';

/** Sections named when something is contained: those nearest, as a plant would begin. */
const CONTAINED_AT_MOST = 6;

/** One failure, and the others still in the plant that had the same work done: held, looked at, released. */
export function* contain(
  section: Section,
  { defect, operation }: { readonly defect: string; readonly operation: string },
  isLast: boolean,
): Flow {
  const { world, serial } = section;
  const chance = section.agency;
  const others = [...world.underway]
    .filter(([other, half]) => other !== serial && half.hasDone(operation))
    .map(([other]) => other)
    .slice(-CONTAINED_AT_MOST);
  if (others.length === 0) return;

  section.now = later(world, section.now, 10);
  const when = (): { occurredAt: string; device: string } => ({
    occurredAt: world.clock.instant(section.now),
    device: 'tablet-quality',
  });
  const [said] = yield* tell(
    telling(
      'containment',
      {
        serial,
        defect,
        operation,
        by: ['crew'],
        sections: others.map((other) => ({ serial: other, shares: ['crew' as const] })),
        note: 'Same crew, same week',
        ...when(),
      },
      { actor: world.staff.qualityManager, atMs: section.now },
    ),
  );
  if (said?.ok !== true) return;
  const params = { containment: `${said.key}-0` };
  const looked = isLast ? others.slice(0, Math.ceil(others.length / 2)) : others;
  for (const other of looked) {
    section.now = later(world, section.now, chance.between(5, 15));
    yield* tell(
      telling(
        'containedLook',
        { serial: other, found: false, ...when() },
        { actor: anotherInspector(world, '', chance), atMs: section.now, params },
      ),
    );
  }
}
