import { tell } from './flow';
import type { Flow } from './flow';
import type { KnownDefect, Section } from './section-state';
import { learn } from './section-state';
import { telling } from './telling';
import { anotherInspector, later, someoneOf } from './world';

/** How often the second look is not content with the rework. */
const NOT_ACCEPTED = 0.05;

/** Rework by the crew, a second look by another: the only way out of a nonconformance. */
export function* mend(section: Section, known: KnownDefect): Flow {
  const { world, chance, serial } = section;
  const params = { defect: known.defect };
  const crew = section.cards.get(known.operation ?? '')?.crew ?? 'trim';

  for (let accepted = false; !accepted;) {
    const worker = someoneOf(world, crew === 'quality' ? 'trim' : crew, chance);
    section.now = later(world, section.now, chance.between(8, 35));
    const rework = telling(
      'rework',
      { serial, crew: worker.crew, occurredAt: world.clock.instant(section.now), device: 'tablet-rework' },
      { actor: worker.actor, atMs: section.now, params },
    );
    accepted = !chance.yes(NOT_ACCEPTED);
    section.now = later(world, section.now, chance.between(4, 25));
    const look = telling(
      'verification',
      { serial, accepted, occurredAt: world.clock.instant(section.now), device: 'tablet-quality' },
      { actor: anotherInspector(world, worker.actor, chance), atMs: section.now, params },
    );
    learn(section, yield* tell(rework, look));
  }
  section.defects.splice(section.defects.indexOf(known), 1);
}

/** Everything known to be wrong is put right. */
export function* mendAll(section: Section): Flow {
  for (const known of [...section.defects]) yield* mend(section, known);
}
