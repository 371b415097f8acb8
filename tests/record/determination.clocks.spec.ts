import { CLOCKS, COUNTING, DETERMINATION, addDays, clocksOf, dueOn } from '@libs/record';
import type { ClockName, CountingRule, Determination, DeterminationEvent } from '@libs/record';
import { daysBetween } from '@libs/kernel';

/**
 * Source: 24 CFR part 3282 subpart I, as read in reference/regulations.md 11.1; each row names its section. Due days
 * are worked out by hand on a calendar, or by JavaScript's own in UTC where every day is tried.
 */
type Row = readonly [number: string, clock: ClockName, section: string, start: string, due: string];
const ROWS: readonly Row[] = [
  ['1', 'initial-determination', '3282.404(a)(1)', '2026-12-15', '2027-01-14'],
  ['2', 'notify-at-once', '3282.404(a)(2)', '2026-12-31', '2026-12-31'],
  ['3', 'class-determination', '3282.404(b)(1)', '2026-12-20', '2027-01-09'],
  ['4', 'plan', '3282.408(a)', '2026-12-20', '2027-01-09'],
  ['5', 'one-home', '3282.407(a)(2)', '2026-03-01', '2026-03-21'],
  ['6', 'corrections', '3282.410(b)', '2027-12-31', '2028-02-29'],
  ['7', 'notices', '3282.410(a)(1)', '2026-03-01', '2026-03-01'],
  ['8', 'notice-copy', '3282.410(a)(2)', '2026-03-01', '2026-03-01'],
  ['9', 'order-hazard', '3282.413(c)(2)(i)', '2028-02-01', '2028-03-02'],
  ['10', 'order-defect', '3282.413(c)(2)(ii)', '2026-11-25', '2027-01-24'],
  ['11', 'appeal', '3282.413(d)', '2026-10-27', '2026-11-06'],
  ['12', 'waiver-class', '3282.413(f)(1)(ii)', '2028-01-01', '2028-03-01'],
  ['13', 'replacement', '3282.414(a)', '2026-03-07', '2026-05-06'],
  ['14', 'depreciation', '3282.414(a)(2)', '2028-02-29', '2029-02-28'],
  ['15', 'report', '3282.417(a)', '2027-01-31', '2027-03-02'],
  ['16', 'service-review', '3282.416(a)(4)', '2027-01-31', '2027-02-28'],
  ['17', 'waiver-request', '3282.407(c)', '2026-02-10', '2026-03-02'],
  ['17', 'waiver-correction', '3282.407(c)', '2026-02-10', '2026-04-11'],
  ['18', 'views', '3282.412', '2026-12-20', '2027-01-04'],
  ['18', 'views-hazard', '3282.412', '2026-12-30', '2027-01-04'],
];

describe('a clock of 24 CFR 3282 subpart I', () => {
  it.each(ROWS)('row %s, %s (%s), started %s is due %s', (...[, clock, section, start, due]) => {
    expect(CLOCKS.find((row) => row.clock === clock)?.section).toBe(section);
    expect(dueOn(clock, start)).toBe(due);
  });

  it('is there for every row of the table, and every one of them is tried here', () => {
    expect(ROWS.map(([, clock]) => clock).toSorted()).toStrictEqual(
      CLOCKS.map(({ clock }) => clock).toSorted(),
    );
    expect(new Set(ROWS.map(([number]) => number)).size).toBe(18);
  });

  it('says which rows nobody has read in the regulation itself', () => {
    const unread = CLOCKS.filter(({ verified }) => !verified).map(({ section }) => section);
    expect(new Set(unread)).toStrictEqual(new Set(['3282.407(c)', '3282.412']));
  });

  it('counts every day of four years as the calendar does, leap day included', () => {
    for (let at = 0; at < 1461; at++) {
      const start = new Date(Date.UTC(2026, 0, 1 + at)).toISOString().slice(0, 10);
      expect(daysBetween(start, addDays(start, 30))).toBe(30);
      expect(addDays(start, 60)).toBe(new Date(Date.UTC(2026, 0, 1 + at + 60)).toISOString().slice(0, 10));
    }
  });

  it('is moved by no change of the clock: thirty days over the night of 8 March 2026 are thirty calendar days', () => {
    expect(dueOn('initial-determination', '2026-02-20')).toBe('2026-03-22');
    expect(dueOn('initial-determination', '2026-10-20')).toBe('2026-11-19');
  });

  describe('whose last day is a day off', () => {
    const moved: CountingRule = {
      ...COUNTING,
      lastDay: 'next-working-day',
      holidays: ['2026-12-25', '2027-01-01'],
    };

    it('stays where it falls, unless the plant has set otherwise', () => {
      expect(dueOn('appeal', '2026-12-15')).toBe('2026-12-25');
    });

    it('moves over a holiday on Friday and its weekend to Monday', () => {
      expect(dueOn('appeal', '2026-12-15', moved)).toBe('2026-12-28');
      expect(dueOn('appeal', '2026-12-22', moved)).toBe('2027-01-04');
    });

    it('counts days off in between like any other', () => {
      expect(dueOn('appeal', '2026-12-20', moved)).toBe('2026-12-30');
    });
  });
});

const fileOf = (...events: readonly DeterminationEvent[]): Determination =>
  events.reduce<Determination>(
    (state, event, at) =>
      DETERMINATION.evolve(state, {
        ...event,
        schema: `${event.type}/1`,
        position: at + 1,
        actor: 'p-1',
        occurredAt: '2026-11-02T08:00:00.000-06:00',
      } as never),
    DETERMINATION.initial,
  );

const determination = 'D-1';
const opened: DeterminationEvent = {
  type: 'DeterminationOpened',
  data: {
    determination,
    claims: ['C-1'],
    receivedOn: '2026-11-02',
    asOfPosition: 1,
    trace: '{}',
    cause: null,
    method: 'exact',
    exposure: [],
  },
};
const serious: DeterminationEvent = {
  type: 'InitiallyDetermined',
  data: { determination, severity: 'serious-defect', decidedOn: '2026-11-20', methods: ['iv'], bases: 'x' },
};

describe('a determination file', () => {
  it('runs for thirty days from the day the complaint came, and warns a week ahead', () => {
    const [clock] = clocksOf(fileOf(opened), '2026-11-24');
    expect(clock).toMatchObject({ due: '2026-12-02', standing: 'running' });
    expect(clocksOf(fileOf(opened), '2026-11-25')[0]?.standing).toBe('soon');
    expect(clocksOf(fileOf(opened), '2026-12-03')[0]?.standing).toBe('over');
  });

  it('starts notice, class and plan once a serious defect is determined', () => {
    const clocks = clocksOf(fileOf(opened, serious), '2026-11-21');
    expect(clocks.map(({ clock, due, standing }) => [clock, due, standing])).toStrictEqual([
      ['initial-determination', '2026-12-02', 'done'],
      ['notify-at-once', '2026-11-20', 'over'],
      ['class-determination', '2026-12-10', 'running'],
      ['plan', '2026-12-10', 'running'],
    ]);
  });

  it('starts nothing where no action is needed', () => {
    const nothing: DeterminationEvent = {
      type: 'InitiallyDetermined',
      data: { ...serious.data, severity: 'no-action', decidedOn: '2026-11-20' } as never,
    };
    expect(clocksOf(fileOf(opened, nothing), '2027-01-01')).toHaveLength(1);
  });

  it('is corrected by the approver’s date and in sixty days at most, and reported thirty days after', () => {
    const approved = (correctBy: string): DeterminationEvent => ({
      type: 'PlanApproved',
      data: { determination, approvedOn: '2026-12-12', noticesBy: null, correctBy, reference: 'r' },
    });
    const due = (correctBy: string): readonly string[] =>
      clocksOf(fileOf(opened, serious, approved(correctBy)), '2026-12-13')
        .slice(-2)
        .map((clock) => clock.due);
    expect(due('2027-01-31')).toStrictEqual(['2027-01-31', '2027-03-02']);
    expect(due('2027-06-01')).toStrictEqual(['2027-02-10', '2027-03-12']);
  });
});
