import type { Card } from './measured';
import type { Flow, Reply, Step } from './flow';
import type { Said, Telling } from './telling';

/** How the schedule reaches the plant. `to` sets the plant's clock before anything of a round is sent. */
export type Reach = {
  readonly to: (atMs: number) => void;
  readonly send: (one: Telling) => Promise<Said>;
  readonly look: (serial: string, key: string) => Promise<readonly Card[]>;
  /** The plant has to look something up for it first: beside others, it would come in whenever that is found. */
  readonly isNewToThePlant: (one: Telling) => boolean;
};

type Thread = {
  readonly flow: Flow;
  readonly order: number;
  waiting: Telling[];
  said: Said[];
  wakeMs: number;
};

/** Minutes of the story told at once: shorter rounds cost commits, longer ones make every entry seem late. */
const WINDOW_MS = 25 * 60_000;

/**
 * Runs all threads by their own clocks. What falls into one window is sent together, by time and then by thread, so
 * that the order never hangs on how fast the plant answers. The window slides with whoever is furthest behind: people
 * at different stations send a few minutes apart in any order, and each their own in turn.
 */
export const runSchedule = async (
  flows: readonly Flow[],
  endMs: number,
  reach: Reach,
  progress: (atMs: number) => void,
): Promise<void> => {
  const threads: Thread[] = flows.map((flow, order) => ({
    flow,
    order,
    waiting: [],
    said: [],
    wakeMs: Infinity,
  }));
  const queue = agenda();
  for (const thread of threads) await resume(thread, { said: [], cards: [] }, reach, queue);

  for (let window = queue.firstMs(); window <= endMs; window = queue.firstMs()) {
    const until = Math.min(endMs, window + WINDOW_MS);
    await round(queue.takeUntil(until), until, reach, queue);
    progress(until);
  }
};

type Agenda = ReturnType<typeof agenda>;

/** Threads by the time of what they send next. */
const agenda = (): {
  add: (thread: Thread) => void;
  firstMs: () => number;
  takeUntil: (ms: number) => Thread[];
} => {
  let threads: Thread[] = [];
  const nextMs = (thread: Thread): number => thread.waiting[0]?.atMs ?? thread.wakeMs;
  return {
    add: (thread) => threads.push(thread),
    firstMs: () => threads.reduce((first, thread) => Math.min(first, nextMs(thread)), Infinity),
    takeUntil: (ms) => {
      const due = threads.filter((thread) => nextMs(thread) <= ms);
      threads = threads.filter((thread) => nextMs(thread) > ms);
      return due;
    },
  };
};

const round = async (due: readonly Thread[], until: number, reach: Reach, queue: Agenda): Promise<void> => {
  const batch = due
    .flatMap((thread) => thread.waiting.filter(({ atMs }) => atMs <= until).map((one) => ({ thread, one })))
    .sort((a, b) => a.one.atMs - b.one.atMs || a.thread.order - b.thread.order);
  reach.to(until);
  const answers = await sendInOrder(
    batch.map(({ one }) => one),
    reach,
  );

  for (const [index, { thread }] of batch.entries()) {
    const said = answers[index];
    if (said !== undefined) thread.said.push(said);
    thread.waiting.shift();
  }
  for (const thread of due) {
    if (thread.waiting.length > 0) queue.add(thread);
    else await resume(thread, { said: thread.said, cards: [] }, reach, queue);
  }
};

/** All at once, as far as their order is sure to be kept. */
const sendInOrder = async (tellings: readonly Telling[], reach: Reach): Promise<readonly Said[]> => {
  const answers: Promise<Said>[] = [];
  for (const one of tellings) {
    const alone = reach.isNewToThePlant(one);
    if (alone) await Promise.all(answers);
    answers.push(reach.send(one));
    if (alone) await Promise.all(answers);
  }
  return Promise.all(answers);
};

/** Lets a thread go on until it sends something again, waits, or ends. */
const resume = async (thread: Thread, reply: Reply, reach: Reach, queue: Agenda): Promise<void> => {
  let next: IteratorResult<Step, void> = thread.flow.next(reply);
  while (next.done !== true) {
    const step = next.value;
    if (step.is !== 'look' && rests(thread, step)) {
      queue.add(thread);
      return;
    }
    const cards = step.is === 'look' ? await reach.look(step.serial, step.key) : [];
    next = thread.flow.next({ said: [], cards });
  }
};

/** Whether it has something to send, or a time to wait for. */
const rests = (thread: Thread, step: Exclude<Step, { is: 'look' }>): boolean => {
  thread.waiting = step.is === 'tell' ? [...step.tellings] : [];
  thread.said = [];
  thread.wakeMs = step.is === 'wait' ? step.untilMs : Infinity;
  return step.is === 'wait' || thread.waiting.length > 0;
};
