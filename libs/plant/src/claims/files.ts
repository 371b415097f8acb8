import type { AnswerOf } from '@libs/contracts';
import { clockSays, eventSays } from '@libs/contracts';
import type { Envelope, Json } from '@libs/kernel';
import { typeOf } from '@libs/ledger';
import { DETERMINATION, clocksOf } from '@libs/record';
import type { CountingRule, Determination } from '@libs/record';
import type { Asked } from '../questions/asked';
import { claimsQuestion, determinationsIn } from './asking';
import { calendarOf } from './calendar';
import type { DueDay } from './calendar';
import { countingIn } from './counting';
import { todayAt } from './today';

type FileAnswer = AnswerOf<'determination'>;

export const determinationsQuestion = (asked: Asked) => async (): Promise<AnswerOf<'determinations'>> => {
  const counting = await countingIn(asked);
  const today = todayAt(asked);
  const files: AnswerOf<'determinations'>['determinations'] = [];
  for (const determination of await determinationsIn(asked)) {
    const state = await asked.ledger.state(DETERMINATION, determination);
    if (state.opened === null) continue;
    const { claims, receivedOn } = state.opened;
    const clocks = clocksAnswer(state, today, counting);
    files.push({ determination, claims: [...claims], receivedOn, says: saysOf(state), clocks });
  }
  const { lastDay, daysOff, holidays, warnDays } = counting;
  return {
    today,
    counting: { lastDay, daysOff: [...daysOff], holidays: [...holidays], warnDays },
    determinations: files,
  };
};

export const determinationQuestion =
  (asked: Asked) =>
  async (determination: string): Promise<FileAnswer | undefined> => {
    const state = await asked.ledger.state(DETERMINATION, determination);
    if (state.opened === null) return undefined;
    const { opened } = state;
    const today = todayAt(asked);
    const events = await asked.ledger.ofStreams([`${DETERMINATION.name}/${determination}`]);
    return {
      determination,
      claims: [...opened.claims],
      receivedOn: opened.receivedOn,
      openedBy: asked.names.person(opened.by),
      asOfPosition: opened.asOfPosition,
      says: saysOf(state),
      cause: opened.cause,
      method: opened.method,
      exposure: opened.exposure.map((home) => ({ ...home, sections: [...home.sections] })),
      trace: frozen(state),
      history: events.map((event) => entryOf(event, asked)),
      classHomes: [...(state.class.at(-1)?.homes ?? [])],
      remedied: state.remedies.map(({ home, how, doneOn }) => ({ home, how, doneOn })),
      clocks: clocksAnswer(state, today, await countingIn(asked)),
    };
  };

/** Days that are due and not done, as a calendar feed. */
export const dueDaysQuestion = (asked: Asked) => async (): Promise<string> => {
  const { determinations, counting } = await determinationsQuestion(asked)();
  const due = determinations.flatMap(({ determination, says, clocks }) =>
    clocks
      .filter(({ doneOn }) => doneOn === null)
      .map(({ clock, due: day, section, says: what }) => ({
        uid: `${clock}-${determination}@studbook`,
        day,
        summary: `${what.en}: ${says.en}`,
        about: `24 CFR ${section}. The regulation and counsel decide, not this calendar.`,
        warnDays: counting.warnDays,
      })),
  );
  return calendarOf([...due, ...(await undecided(asked, counting.warnDays))], asked.clock());
};

/** Complaints that are in no file yet: their thirty days run all the same. */
const undecided = async (asked: Asked, warnDays: number): Promise<readonly DueDay[]> =>
  (await claimsQuestion(asked)()).claims
    .filter((claim) => claim.due.doneOn === null && claim.determinations.length === 0)
    .map(({ claim, due: { day }, says }) => ({
      uid: `initial-determination-${claim}@studbook`,
      day,
      summary: `${clockSays('initial-determination').en}: ${claim}, ${says.en}`,
      about: '24 CFR 3282.404(a)(1). The regulation and counsel decide, not this calendar.',
      warnDays,
    }));

const frozen = ({ opened }: Determination): Json =>
  opened === null ? null : (JSON.parse(opened.trace) as Json);

/** What the file is about: the trace as it stood says it. */
const saysOf = (state: Determination): FileAnswer['says'] => {
  const trace = frozen(state);
  if (trace === null || typeof trace !== 'object' || !('says' in trace)) return { en: '', es: '' };
  const { says } = trace as { readonly says: FileAnswer['says'] };
  return says;
};

const clocksAnswer = (state: Determination, today: string, counting: CountingRule): FileAnswer['clocks'] =>
  clocksOf(state, today, counting).map((clock) => ({ ...clock, says: clockSays(clock.clock) }));

const SEALED = ['bases', 'note'] as const;

const methodsIn = ({ methods }: Envelope['data']): string[] =>
  Array.isArray(methods) ? methods.filter((one) => typeof one === 'string') : [];

const entryOf = (event: Envelope, { names, unsealed }: Asked): FileAnswer['history'][number] => {
  const field = SEALED.find((one) => typeof event.data[one] === 'string');
  const text = field === undefined ? undefined : event.data[field];
  return {
    type: typeOf(event.schema),
    says: eventSays(typeOf(event.schema), event.data, names.current()),
    by: names.person(event.actor),
    at: event.occurredAt,
    methods: methodsIn(event.data),
    note:
      field !== undefined && typeof text === 'string'
        ? unsealed(text, { stream: event.stream, field })
        : null,
  };
};
