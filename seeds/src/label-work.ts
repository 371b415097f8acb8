import { agencyLooks, liftTags } from './agency-look';
import { labelNumber } from './agency-visits';
import { reconstructedEntry, someoneWhoDidNotVouch, workEntry } from './entries';
import { CAREFUL } from './fates';
import { close } from './finding-out';
import { tell } from './flow';
import type { Flow } from './flow';
import type { Card } from './measured';
import { mend, mendAll } from './mending';
import { isCovered, makeRecordGood } from './record-made-good';
import type { Section } from './section-state';
import { learn } from './section-state';
import { telling } from './telling';
import type { Said } from './telling';
import { later } from './world';

/** Now and then a label is bent before it is on. */
const SPOILT = 0.02;
/** What is missing is put right and the label is tried again; after this often it waits for another day. */
const TRIES = 4;

type Missing = NonNullable<Extract<Said, { readonly ok: true }>['answer']['findings']>[number];

export function* affixLabel(section: Section, card: Card): Flow {
  const { world } = section;
  if (section.agency.yes(SPOILT)) yield* spoil(section);
  for (let tries = 0; tries < TRIES; tries += 1) {
    section.now = later(world, section.now, section.chance.between(3, 10));
    if (section.now > world.endMs) return;
    const said = yield* tell(labelling(section, card));
    learn(section, said);
    const [answer] = said;
    if (answer?.ok !== true) return;
    if (answer.answer.answer !== 'refused') {
      world.labels.next += 1;
      section.done.add(card.operation);
      return;
    }
    yield* putRight(section, answer.answer.findings ?? []);
  }
}

const labelling = (section: Section, card: Card): ReturnType<typeof telling> => {
  const { world, chance, serial } = section;
  return telling(
    'label',
    {
      serial,
      number: labelNumber(world.labels.next + 1),
      photos: [chance.hex(64)],
      occurredAt: world.clock.instant(section.now),
      device: `tablet-${card.station}`,
      station: card.station,
    },
    { actor: someoneWhoDidNotVouch(section), atMs: section.now },
  );
};

function* spoil(section: Section): Flow {
  const { world } = section;
  world.labels.next += 1;
  const number = labelNumber(world.labels.next).replaceAll(' ', '');
  yield* tell(
    telling(
      'labelVoid',
      { reason: 'label-damaged', occurredAt: world.clock.instant(section.now), device: 'tablet-final' },
      { actor: world.staff.qualityManager, atMs: section.now, params: { number } },
    ),
  );
}

/** Each thing missing, by whoever it is up to. */
function* putRight(section: Section, missing: readonly Missing[]): Flow {
  for (const one of missing) {
    if (one.rule === 'stage-not-seen') yield* agencyLooks(section);
    if (AGAIN.has(one.rule)) yield* again(section, one.operation);
    if (one.defect !== undefined) yield* closeOrMend(section, one, one.defect);
  }
  yield* mendAll(section);
  yield* liftTags(section);
  yield* makeRecordGood(section);
}

const AGAIN: ReadonlySet<string> = new Set(['test-not-recent', 'required-work-unproven']);

function* closeOrMend(section: Section, missing: Missing, defect: string): Flow {
  const { class: ofClass, operation } = missing;
  if (ofClass === 'shortage' || ofClass === 'punch') {
    yield* close(section, defect, ofClass === 'punch' ? 'signed' : 'fitted');
  } else if (ofClass === 'nonconformance' && !section.defects.some((known) => known.defect === defect)) {
    const known = { defect, operation, reworkedBy: null };
    section.defects.push(known);
    yield* mend(section, known);
  }
}

function* again(section: Section, operation: string): Flow {
  const card = section.cards.get(operation);
  if (card === undefined || card.label) return;
  section.now = later(section.world, section.now, 12);
  const entry =
    card.entry !== 'T' && isCovered(section, card)
      ? reconstructedEntry(section, card, card.station)
      : workEntry(section, card, card.station, CAREFUL);
  learn(section, yield* tell(entry));
  section.done.add(operation);
}
