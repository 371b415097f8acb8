import type { AnswerOf, BodyOf } from '@libs/contracts';
import { HOME } from '@libs/record';
import type { Workings } from '../workings';
import { changesOfSections } from './section-changes';
import { now, targetOf } from './which';

type Preview = AnswerOf<'orderPreview'>;

/**
 * By the revision the home is judged by, or the one it would be judged by now: what the same telling would make due,
 * undone or newly wrong. Undefined: nothing is known under that serial, or no revision is in force.
 */
export const previewOrder =
  (workings: Workings) =>
  async (serial: string, body: BodyOf<'orderPreview'>): Promise<Preview | undefined> => {
    const family = await workings.families.of(serial);
    if (family === undefined) return undefined;
    const { revision: own } = await workings.ledger.state(HOME, family.home);
    const revision = own ?? workings.plans.inForce(now(workings))?.revision;
    const target = revision === undefined ? undefined : await targetOf(workings, { revision });
    if (target === undefined) return undefined;

    const sections = await changesOfSections(workings, target, family.sections, (unit) => ({
      ...unit.design,
      ...body.design,
      ...body.sections.find((section) => section.serial === unit.serial)?.design,
    }));
    return { home: family.home, revision: target.revision, sections: [...sections] };
  };
