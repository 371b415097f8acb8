import type { AnswerOf } from '@libs/contracts';
import { LABEL, LABEL_SUPPLY, isIn, labelNumber, labelText } from '@libs/record';
import type { Label, LabelRun, RecordedLabelEvent } from '@libs/record';
import { typeOf } from '@libs/ledger';
import { SUPPLY_ID } from '../labels';
import type { Asked } from './asked';

type Log = AnswerOf<'labelLog'>;
type Row = Log['labels'][number];

/** Runs shown whole; those before are shown by their sums. A run lasts two to four weeks. */
const RUNS_SHOWN = 3;

/** Every label: received, used, void, taken back, replaced; and each section that wears one against the log. */
export const labelLogQuestion = (asked: Asked) => async (): Promise<Log> => {
  const { runs } = await asked.ledger.state(LABEL_SUPPLY, SUPPLY_ID);
  const states = await labelStates(asked);
  const stages = new Map(
    (await asked.views.cards(['on-line', 'pulled', 'shipped'])).map((card) => [card.serial, card] as const),
  );
  const shown = runs.slice(-RUNS_SHOWN).flatMap(numbersOf);
  return {
    runs: runs.map((run) => runRow(run, states)),
    counts: countsOf(runs, states),
    labels: shown
      .map((number) => rowOf(number, states.get(number), (serial) => stages.get(serial)?.stage ?? null))
      .reverse(),
    unaccounted: [...stages.values()]
      .filter(({ serial, label }) => label !== null && states.get(label)?.label.serial !== serial)
      .map(({ serial, label }) => ({ serial, label })),
  };
};

type Known = { readonly label: Label; readonly at: string };

/** One fold over all label streams: a few thousand a year, three events each at most. */
const labelStates = async ({ ledger, streamsOf }: Asked): Promise<ReadonlyMap<string, Known>> => {
  const states = new Map<string, Known>();
  const streams = await streamsOf(LABEL.name);
  for (const event of streams.length === 0 ? [] : await ledger.ofStreams(streams)) {
    const number = event.stream.slice(LABEL.name.length + 1);
    const before = states.get(number)?.label ?? LABEL.initial;
    states.set(number, { label: LABEL.evolve(before, recorded(event)), at: event.occurredAt });
  }
  return states;
};

/** In the streams of labels stand events of labels and nothing else: their own decider wrote them. */
const recorded = (event: { readonly schema: string }): RecordedLabelEvent =>
  ({ ...event, type: typeOf(event.schema) }) as RecordedLabelEvent;

const numbersOf = ({ first, last }: LabelRun): readonly string[] => {
  const from = labelNumber(first);
  const to = labelNumber(last);
  if (from === undefined || to === undefined) return [];

  return Array.from({ length: to.digits - from.digits + 1 }, (_number, index) =>
    labelText({ letters: from.letters, digits: from.digits + index }),
  );
};

const rowOf = (number: string, known: Known | undefined, stageOf: (serial: string) => string | null): Row => {
  const { serial, became, replacedBy } = known?.label ?? LABEL.initial;
  return {
    number,
    standing: became,
    serial,
    replacedBy,
    stage: serial === null ? null : stageOf(serial),
    at: known?.at ?? null,
  };
};

const runRow = (run: LabelRun, states: ReadonlyMap<string, Known>): Log['runs'][number] => {
  const count = numbersOf(run).length;
  const touched = [...states.keys()].filter((number) => isIn(run, number)).length;
  return { first: run.first, last: run.last, at: run.at, count, unused: count - touched };
};

const countsOf = (runs: readonly LabelRun[], states: ReadonlyMap<string, Known>): Log['counts'] => {
  const received = runs.reduce((sum, run) => sum + numbersOf(run).length, 0);
  const became = (standing: Label['became']): number =>
    [...states.values()].filter(({ label }) => label.became === standing).length;
  const inRuns = [...states.keys()].filter((number) => runs.some((run) => isIn(run, number))).length;
  return {
    received,
    unused: received - inRuns,
    used: became('used'),
    void: became('void'),
    reclaimed: became('reclaimed'),
    replaced: became('replaced'),
  };
};

/** Labels go on in the order of their numbers (24 CFR 3282.362(c)(2)); the first that lies in the drawer is next. */
export const nextLabel = async (asked: Asked): Promise<string | null> => {
  const { runs } = await asked.ledger.state(LABEL_SUPPLY, SUPPLY_ID);
  const touched = new Set(await asked.streamsOf(LABEL.name));
  for (const run of runs) {
    const next = numbersOf(run).find((number) => !touched.has(`${LABEL.name}/${number}`));
    if (next !== undefined) return next;
  }
  return null;
};
