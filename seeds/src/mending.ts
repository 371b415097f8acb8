import { tell } from './flow';
import type { Flow } from './flow';
import type { KnownDefect, Section } from './section-state';
import { learn } from './section-state';
import { telling } from './telling';
import { anotherInspector, later, someoneOf } from './world';

/** Of what is found, so much is decided on before anyone mends it; the rest is plain rework. */
const DECIDED = 0.12;
/** Of what is decided on, so much stays as it is, with somebody's name under it. */
const USED_AS_IS = 0.2;

/** How often the second look is not content with the rework. */
const NOT_ACCEPTED = 0.05;

/** Rework by the crew, a second look by another: the only way out of a nonconformance. */
export function* mend(section: Section, known: KnownDefect): Flow {
  const { world, chance, serial } = section;
  const params = { defect: known.defect };
  const crew = section.cards.get(known.operation ?? '')?.crew ?? 'trim';
  const isOver = chance.yes(DECIDED) && (yield* decideOn(section, known));
  if (isOver) {
    section.defects.splice(section.defects.indexOf(known), 1);
    return;
  }

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

/** The quality manager decides; true: it stays as it is, and there is nothing to mend. */
function* decideOn(section: Section, { defect }: KnownDefect): Flow<boolean> {
  const { world, chance, serial } = section;
  section.now = later(world, section.now, chance.between(4, 20));
  const asIs = chance.yes(USED_AS_IS);
  const disposition = asIs ? 'use-as-is' : chance.pick(['repair', 'rework', 'scrap'] as const);
  const said = yield* tell(
    telling(
      'disposition',
      {
        serial,
        disposition,
        detail: disposition === 'repair' ? chance.pick(['RD-04', 'RD-11', 'letter 26-118']) : null,
        ...(asIs ? { approval: 'R. Quade, engineer of record (invented), letter 26-131' } : {}),
        occurredAt: world.clock.instant(section.now),
        device: 'office-2',
      },
      { actor: world.staff.qualityManager, atMs: section.now, params: { defect } },
    ),
  );
  learn(section, said);
  return asIs && said.every(({ ok }) => ok);
}

/** Everything known to be wrong is put right. */
export function* mendAll(section: Section): Flow {
  for (const known of [...section.defects]) yield* mend(section, known);
}
