import { tell } from './flow';
import type { Flow } from './flow';
import { makeRecordGood } from './record-made-good';
import type { Section } from './section-state';
import { learn } from './section-state';
import { telling } from './telling';
import { anotherInspector, later } from './world';

/** A hold placed by hand: somebody is not content, and the quality manager decides within the hour or so. */
export function* lookAgain(section: Section): Flow {
  const { world, chance, serial } = section;
  section.now = later(world, section.now, chance.between(1, 10));
  const said = yield* tell(
    telling(
      'hold',
      {
        serial,
        reason: chance.pick(['look-again', 'agency', 'suspect-lot', 'damaged']),
        note: chance.pick([
          'Not sure about the last one',
          'The agency wants to see it',
          'Box was open when it came',
        ]),
        occurredAt: world.clock.instant(section.now),
        device: 'tablet-quality',
      },
      { actor: anotherInspector(world, '', chance), atMs: section.now },
    ),
  );
  learn(section, said);
  section.now = later(world, section.now, chance.between(15, 70));
  yield* makeRecordGood(section);
}
