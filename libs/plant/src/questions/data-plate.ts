import type { AnswerOf } from '@libs/contracts';
import type { Words } from '@libs/judge';
import { floorDay } from '@libs/kernel';
import { labelShown } from '@libs/record';
import type { Unit } from '@libs/record';
import type { PlateLine, Rulebook } from '@libs/rulebook';
import type { Names } from '../names';
import type { Asked } from './asked';
import { subjectOf } from './subject';

type Plate = AnswerOf<'dataPlate'>;
type Item = Plate['items'][number];

type Home = {
  readonly home: Unit;
  readonly sections: readonly Unit[];
  readonly manufacturedOn: string | null;
  readonly names: Names;
};

/** What the plate says, from the design, the record and the labels themselves; what is not there yet is named. */
export const dataPlateQuestion =
  (asked: Asked) =>
  async (serial: string): Promise<Plate | undefined> => {
    const subject = await subjectOf(serial, asked);
    if (subject === undefined) return undefined;

    const { home, sections } = subject;
    const names = asked.names.ofRevision(home.revision);
    const manufacturedOn = await madeOn(home, sections, asked);
    const rulebook = rulebookOf(home, asked);
    const lines = (rulebook?.plate ?? []).filter(({ when }) => applies(when, home));
    const items = lines.map((line) => itemOf(line, { home, sections, manufacturedOn, names }));
    return {
      home: home.serial,
      model: home.model,
      manufacturedOn,
      items,
      differs: items.filter(({ missing }) => missing).map(({ name }) => name),
    };
  };

const rulebookOf = ({ revision }: Unit, { plans }: Asked): Rulebook | undefined =>
  (revision === null ? plans.current() : plans.ofRevision(revision))?.rulebook;

const applies = (when: PlateLine['when'], { design }: Unit): boolean =>
  Object.entries(when).every(([attribute, value]) => design[attribute] === value);

/** The day its last section was labelled: before that the home is not manufactured yet (24 CFR 3282.7(h)). */
const madeOn = async (home: Unit, sections: readonly Unit[], { views }: Asked): Promise<string | null> => {
  if (sections.length === 0 || sections.some(({ label }) => label === null)) return null;
  const cards = await views.cardsOfHome(home.serial);
  const days = cards.flatMap(({ labelledAt }) => (labelledAt === null ? [] : [floorDay(labelledAt)]));
  return days.reduce<string | null>((last, day) => (last === null || day > last ? day : last), null);
};

const itemOf = (line: PlateLine, home: Home): Item => {
  const says = SAYS[line.from](line, home);
  return { id: line.id, name: line.name, says, source: line.from, missing: says === null };
};

const same = (text: string): Words => ({ en: text, es: text });
const list = (texts: readonly string[]): Words | null => (texts.length === 0 ? null : same(texts.join(', ')));

const SAYS: { readonly [from in PlateLine['from']]: (line: PlateLine, home: Home) => Words | null } = {
  serial: (_line, { home, sections }) =>
    list(sections.length === 0 ? [home.serial] : sections.map(({ serial }) => serial)),
  model: (_line, { home }) => same(home.model),
  made: (_line, { manufacturedOn }) => (manufacturedOn === null ? null : same(manufacturedOn)),
  labels: (_line, { sections }) =>
    sections.some(({ label }) => label === null)
      ? null
      : list(sections.map(({ label }) => labelShown(label ?? ''))),
  design: ({ of }, { home, names }) => designSays(of, home, names),
  recorded: ({ of }, { sections }) => recordedSays(of, sections),
  text: ({ text }) => text,
};

const designSays = (attributes: readonly string[], { design }: Unit, names: Names): Words | null => {
  const values = attributes.map((attribute) => [attribute, design[attribute]] as const);
  if (values.some(([, value]) => value === undefined)) return null;
  const words = values.map(([attribute, value]) => names.attributeValue(attribute, value ?? ''));
  return { en: words.map(({ en }) => en).join(', '), es: words.map(({ es }) => es).join(', ') };
};

/** Texts recorded with these operations, on whichever section they were done. */
const recordedSays = (operations: readonly string[], sections: readonly Unit[]): Words | null => {
  const texts = sections.flatMap(({ work }) =>
    operations.flatMap((operation) =>
      (work[operation]?.values ?? []).filter(({ unit, value }) => unit === null && !YES_NO.has(value)),
    ),
  );
  return list(texts.map(({ value }) => value));
};

/** An answer to a question is no maker and no model. */
const YES_NO: ReadonlySet<string> = new Set(['yes', 'no']);
