import { tell } from './flow';
import type { Flow } from './flow';
import type { Section } from './section-state';
import { learn } from './section-state';
import { later } from './world';

/** Sign-offs made after the section has gone: sent now, with the time the work was really done. */
export function* sendUnsent(section: Section): Flow {
  for (const unsent of section.unsent.splice(0)) {
    section.now = later(section.world, section.now, section.chance.between(2, 9));
    learn(section, yield* tell({ ...unsent, atMs: section.now }));
  }
}
