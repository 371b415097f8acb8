import { changeSays, problemSays } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import { differenceOf, readRulebook, touchedBy } from '@libs/rulebook';
import type { Change, RulebookFiles } from '@libs/rulebook';
import type { Workings } from '../workings';
import { changesOfSections, isTouched } from './section-changes';
import { historyOf, targetOf } from './which';

export type Examination = AnswerOf<'examination'>;

/** Every problem at once; where there is none, what is different and what it would mean on the line today. */
export const examine =
  (workings: Workings) =>
  async (files: RulebookFiles): Promise<Examination> => {
    const base = workings.plans.current();
    const nothing = {
      base: base?.revision ?? null,
      problems: [],
      changes: [],
      touches: { design: false, manual: false },
      sections: [],
      looked: 0,
    };
    const read = readRulebook(files);
    if (!read.ok)
      return { ...nothing, problems: read.problems.map((one) => ({ ...one, words: problemSays(one.says) })) };
    if (base === null) return nothing;

    const changes = differenceOf(base.rulebook, read.rulebook);
    const target = await targetOf(workings, { files });
    const serials = await onTheLine(workings);
    const sections = target === undefined ? [] : await changesOfSections(workings, target, serials);
    return {
      ...nothing,
      changes: changes.map(changeAnswer),
      touches: touchedBy(changes),
      sections: sections.filter(isTouched),
      looked: sections.length,
    };
  };

/** The same of what waits for approval; without one, of the latest revision itself. Undefined: no such proposal. */
export const examineProposal =
  (workings: Workings) =>
  async (proposal: string | null): Promise<Examination | undefined> => {
    const { proposals, revisions } = await historyOf(workings);
    const found = proposal === null ? revisions.at(-1) : proposals.find((open) => open.proposal === proposal);
    return found === undefined ? undefined : examine(workings)(found.files);
  };

const onTheLine = async ({ views }: Workings): Promise<readonly string[]> =>
  (await views.cards(['on-line', 'pulled']))
    .filter(({ kind }) => kind === 'section')
    .map(({ serial }) => serial);

const changeAnswer = (change: Change): Examination['changes'][number] => ({
  what: change.what,
  change: change.change,
  id: change.id,
  touches: change.touches,
  file: change.file,
  row: change.row,
  says: changeSays(change),
});
