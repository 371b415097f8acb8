import { ROUTES } from '@libs/contracts';
import type { AnswerOf, SentBodyOf } from '@libs/contracts';
import type { Test } from '@libs/judge';
import type { Plant, Sender } from '@libs/plant';
import { WET_HALF } from './demonstration-rulebook';

type Card = AnswerOf<'section'>['operations'][number];
type Asked = Card['values'][number];
const { role: _role, sections: _sections, ...HOME_DESIGN } = WET_HALF;

/** The boundary: the contract leaves the compiled test's shape to the judge. */
const testOf = (asked: Asked): Test => asked.test as Test;

/** A value that meets a test: what a crew doing it right writes down. */
const meeting = (test: Test, otherwise: string): string => {
  switch (test.is) {
    case 'text':
      return test.text;
    case 'boolean':
      return test.boolean ? 'yes' : 'no';
    case 'compare':
      return test.op === '<' || test.op === '>' ? otherwise : test.number;
    case 'interval':
      return test.from;
    case 'anyOf':
      return test.tests[0] === undefined ? otherwise : meeting(test.tests[0], otherwise);
    default:
      return otherwise;
  }
};
const plain = ({ kind, choices }: Asked): string => {
  if (kind === 'yes-no') return 'yes';
  return kind === 'choice' ? (choices?.[0] ?? 'as drawn') : '1';
};

const valuesOf = (card: Card) =>
  card.values
    .filter(({ from, kind, asked }) => from === 'entry' && kind !== 'derived' && asked === 'always')
    .map((asked) => ({
      characteristic: asked.characteristic,
      value: meeting(testOf(asked), plain(asked)),
      unit: asked.unit,
    }));

const PHOTO = 'a'.repeat(64);

/** One home's section as a good day leaves it: everything up to a station done, except what a test leaves out. */
export const buildUpTo = async (
  plant: Plant,
  {
    home,
    station,
    except,
    halves = ['A'],
  }: {
    readonly home: string;
    readonly station: string;
    readonly except: readonly string[];
    /** Which of its sections are built; the other stays ordered. */
    readonly halves?: readonly ('A' | 'B')[];
  },
): Promise<string> => {
  let sent = 0;
  const sender = (actor: string): Sender => ({
    key: `${home}-${String((sent += 1))}`,
    actor,
    assurance: 'pin',
  });
  const manager = 'built-manager';
  const people = [
    { person: manager, name: 'Mara', roles: ['quality-manager'], crew: 'quality', stations: [] },
    { person: 'built-inspector', name: 'Ines', roles: ['inspector'], crew: 'quality', stations: [] },
  ];
  for (const person of people) await plant.enroll(person, sender(manager));

  const serial = `${home}A`;
  const ordered: SentBodyOf<'home'> = {
    home,
    model: 'Alder',
    design: HOME_DESIGN,
    sections: [
      { serial, design: { role: 'wet' } },
      { serial: `${home}B`, design: { role: 'dry' } },
    ],
  };
  await plant.tell.home(ROUTES.home.body.parse(ordered), sender(manager), {});
  const { stations } = await plant.asks.plant();
  const posOf = (id: string): number => stations.find((one) => one.id === id)?.pos ?? 0;
  const last = posOf(station);
  const line = stations
    .filter(({ pos }) => pos !== null && pos <= last)
    .sort((one, other) => posOf(one.id) - posOf(other.id));
  for (const half of halves) await buildHalf(`${home}${half}`);
  return serial;

  async function buildHalf(serial: string): Promise<void> {
    const plan = await plant.asks.section(serial, 'all');

    await plant.tell.start(ROUTES.start.body.parse({ serial, at: line[0]?.id }), sender(manager), {});
    for (const { id } of line.slice(1))
      await plant.tell.move(ROUTES.move.body.parse({ serial, to: id }), sender(manager), {});
    const work = (plan?.operations ?? []).filter(
      (card) => posOf(card.station) < last && !except.includes(card.operation),
    );
    for (const card of work) {
      const body = {
        serial,
        operation: card.operation,
        values: valuesOf(card),
        photos: [PHOTO],
        crew: card.crew,
        station: card.station,
      };
      const who = card.entry === 'I' || card.entry === 'T' ? 'built-inspector' : manager;
      const told = await plant.tell.work(ROUTES.work.body.parse(body), sender(who), {});
      if (!told.ok) throw new Error(`${card.operation} was rejected: ${JSON.stringify(told.rejection)}`);
    }
  }
};
