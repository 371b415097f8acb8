import fc from 'fast-check';
import { SECTION } from '@libs/record';
import type { RecordedUnitEvent, Unit } from '@libs/record';
import { anyDay, decide, play, after, SIGNERS, anyWork } from '../support/any-day';
import type { Step } from '../support/any-day';
import { PLAN, withdraw } from '../support/unit-spec';

/**
 * Goal: whatever is asked and told, in whatever order, no cover is cleared over unproven work, no hold or defect
 * goes without an event that says so, nothing told is refused, and what is withdrawn leaves nothing behind.
 * Method: throw random commands at the real decider and check the history it writes, event by event, against a
 * reckoning of our own that knows neither the judge nor the state. A failure prints the shortest day and its seed.
 */

type Entry = { readonly except: readonly string[]; readonly missing: readonly string[] };

/** What stands of an operation by the events alone: the last entry that nobody withdrew, as corrected. */
const entryOf = (events: readonly RecordedUnitEvent[], operation: string): Entry | undefined => {
  const entries: Entry[] = [];
  for (const event of events) {
    if (!('operation' in event.data) || event.data.operation !== operation) continue;
    if (event.type === 'WorkRecorded' || event.type === 'TestRecorded') entries.push(event.data);
    if (event.type === 'WorkCorrected') entries.splice(-1, 1, event.data);
    if (event.type === 'WorkWithdrawn') entries.pop();
  }
  return entries.at(-1);
};

const openHolds = (events: readonly RecordedUnitEvent[]): readonly string[] => {
  const released = new Set(
    events.flatMap((event) => (event.type === 'HoldReleased' ? [event.data.hold] : [])),
  );
  return events.flatMap((event) =>
    event.type === 'HoldPlaced' && !released.has(event.data.hold) ? [event.data.hold] : [],
  );
};

const openDefects = (events: readonly RecordedUnitEvent[]): readonly string[] => {
  const over = new Set(
    events.flatMap((event) =>
      event.type === 'DefectClosed' || (event.type === 'DefectVerified' && event.data.accepted)
        ? [event.data.defect]
        : [],
    ),
  );
  return events.flatMap((event) =>
    event.type === 'DefectRecorded' && !over.has(event.data.defect) ? [event.data.defect] : [],
  );
};

const RUNS = { numRuns: 400 } as const;

describe('whatever is asked and told of a section', () => {
  it('never clears a cover over work that is not proven', () => {
    fc.assert(
      fc.property(anyDay, (steps) => {
        play(steps, (before, _step, [answer]) => {
          if (answer?.type !== 'AskingCleared') return;
          const { operation, except } = answer.data;
          for (const { operation: hidden } of PLAN.operations[operation]?.hides ?? []) {
            const entry = entryOf(before.events, hidden);
            expect(entry?.missing).toStrictEqual([]);
            expect(except).toStrictEqual(expect.arrayContaining([...(entry?.except ?? [])]));
          }
        });
      }),
      RUNS,
    );
  });

  it('clears covers now and then, so that what is said of clearing them says something', () => {
    let cleared = 0;
    for (const steps of fc.sample(anyDay, { numRuns: 400, seed: 7 })) {
      play(steps, (_before, _step, [answer]) => {
        if (answer?.type === 'AskingCleared' && answer.data.operation === 'boarded') cleared += 1;
      });
    }
    expect(cleared).toBeGreaterThan(20);
  });

  it('never clears a cover over an open nonconformance', () => {
    fc.assert(
      fc.property(anyDay, (steps) => {
        play(steps, (before, _step, [answer]) => {
          if (answer?.type !== 'AskingCleared') return;
          const open = openDefects(before.events);
          const hides = (PLAN.operations[answer.data.operation]?.hides ?? []).map(
            ({ operation }) => operation,
          );
          for (const event of before.events) {
            if (event.type !== 'DefectRecorded' || event.data.class !== 'nonconformance') continue;
            if (!open.includes(event.data.defect) || event.data.place !== null) continue;
            expect(hides).not.toContain(event.data.operation);
          }
        });
      }),
      RUNS,
    );
  });

  it('keeps every hold until an event releases it, and every defect until one closes it', () => {
    fc.assert(
      fc.property(anyDay, (steps) => {
        const { events, state } = play(steps);
        expect(state.holds.map(({ hold }) => hold)).toStrictEqual(openHolds(events));
        expect(state.defects.map(({ defect }) => defect)).toStrictEqual(openDefects(events));
      }),
      RUNS,
    );
  });

  it('names every hold and every defect once', () => {
    fc.assert(
      fc.property(anyDay, (steps) => {
        const ids = play(steps).events.flatMap((event) => {
          if (event.type === 'HoldPlaced') return [event.data.hold];
          return event.type === 'DefectRecorded' ? [event.data.defect] : [];
        });
        expect(new Set(ids).size).toBe(ids.length);
      }),
      RUNS,
    );
  });

  it('records whatever work is told, and holds it where it is grave', () => {
    fc.assert(
      fc.property(anyDay, (steps) => {
        play(steps, (before, step, [entry]) => {
          if (step.command.type !== 'RecordWork') return;
          expect(['WorkRecorded', 'TestRecorded']).toContain(entry?.type);
          const grave =
            entry !== undefined && 'findings' in entry.data && entry.data.findings !== undefined
              ? entry.data.findings.filter(({ grade, rule }) => grade !== 'note' && rule !== 'held')
              : [];
          if (grave.length > 0) {
            const after = play([...stepsBefore(steps, step), step]);
            expect(openHolds(after.events).length).toBeGreaterThan(0);
          }
          expect(before.events.length).toBeGreaterThan(0);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('withdraws an entry as if it had never been, but for history', () => {
    fc.assert(
      fc.property(anyDay, anyWork, fc.constantFrom(...SIGNERS), (steps, work, by) => {
        const before = play(steps);
        const { operation } = work.type === 'RecordWork' ? work.data : { operation: '' };
        const told = decide(before, { command: work, by }, 98);
        const there = after(before, told.ok ? told.events : [], by);
        const taken = decide(there, { command: withdraw(operation), by }, 99);
        const back = after(there, taken.ok ? taken.events : [], by);

        expect(back.state.work).toStrictEqual(before.state.work);
        expect(back.state.evidence[operation]?.before).toStrictEqual(
          before.state.evidence[operation]?.before,
        );
        expect(back.state.defects).toStrictEqual(before.state.defects);
        expect(sortedHolds(back.state)).toStrictEqual(expect.arrayContaining(sortedHolds(before.state)));
      }),
      RUNS,
    );
  });

  it('comes to the same state when its history is read again', () => {
    fc.assert(
      fc.property(anyDay, (steps) => {
        const { events, state } = play(steps);
        expect(events.reduce(SECTION.evolve, SECTION.initial)).toStrictEqual(state);
      }),
      RUNS,
    );
  });
});

const stepsBefore = (steps: readonly Step[], step: Step): readonly Step[] =>
  steps.slice(0, steps.indexOf(step));

/** What holds the section, whatever the hold is called: one that comes back has a name of its own. */
const sortedHolds = ({ holds }: Unit): readonly string[] =>
  holds
    .map(
      ({ reason, operation, characteristic }) => `${reason} ${String(operation)} ${String(characteristic)}`,
    )
    .sort();
