import { operationCard } from '@libs/contracts';
import { standings } from '@libs/judge';
import type { Asked } from './asked';
import { GOVERNING } from './governing';
import type { Questions } from './questions';
import { subjectOf } from './subject';

/** Who signed is the plant's to know, not the next installer's. */
const nobody = (): string => '';

/** What is done on a whole home at its site, to what values. */
export const siteWorkQuestion =
  (asked: Asked): Questions['siteWork'] =>
  async (serial) => {
    const subject = await subjectOf(serial, asked);
    if (subject === undefined) return undefined;

    const { home, plan, state } = subject;
    const names = asked.names.ofRevision(home.revision);
    const site = plan?.stations.find(({ kind }) => kind === 'site')?.id ?? null;
    const texts = asked.plans.current()?.rulebook.texts ?? [];
    return {
      home: home.serial,
      model: home.model,
      operations:
        plan === null
          ? []
          : standings(plan, state, site).flatMap((standing) => {
              const operation = plan.operations[standing.operation];
              return operation?.scope !== 'home'
                ? []
                : [
                    operationCard(operation, standing, {
                      ...{ plan, state, serial: home.serial },
                      ...{ person: nobody, text: names.text },
                    }),
                  ];
            }),
      texts: texts.map(({ id, name }) => ({ id, name })),
      governing: GOVERNING,
    };
  };
