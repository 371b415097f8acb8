import type { AddressInfo } from 'node:net';
import { SMTPServer } from 'smtp-server';
import { openFeedHouse, wishFor } from '../../support/feed-house';

type PostOffice = {
  readonly letters: string[];
  readonly url: string;
  readonly refuse: (code: number | null) => void;
  readonly close: () => Promise<void>;
};

/** A real mail server on this machine. */
const openPostOffice = async (): Promise<PostOffice> => {
  const letters: string[] = [];
  let refusal: number | null = null;
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    onData: (stream, _session, done) => {
      const chunks: Buffer[] = [];
      stream.on('data', (chunk: Buffer) => chunks.push(chunk));
      stream.on('end', () => {
        if (refusal !== null) {
          done(Object.assign(new Error('not now'), { responseCode: refusal }));
          return;
        }
        letters.push(Buffer.concat(chunks).toString('utf8'));
        done();
      });
    },
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const { port } = server.server.address() as AddressInfo;
  return {
    letters,
    url: `smtp://127.0.0.1:${String(port)}`,
    refuse: (code) => {
      refusal = code;
    },
    close: () => new Promise((closed) => server.close(closed)),
  };
};

const counted = (count: number, of: number) => ({ count, of });
/** What a chart that raised an alarm answers; the charts themselves are tried elsewhere. */
const ALARM = {
  day: '2026-03-01',
  change: {
    since: '2026-02-11',
    before: counted(4, 90),
    beforeInterval: { low: null, high: null },
    after: counted(9, 21),
    afterInterval: { low: null, high: null },
  },
  acknowledged: null,
};
const signals = () =>
  Promise.resolve({
    from: '2026-01-01',
    to: '2026-03-02',
    position: 1,
    budget: {
      falseAlarmsPerMonth: 0.25,
      charts: 1,
      workdaysBetween: 80,
      rules: 'few-counts' as const,
      pointsBetween: null,
    },
    stations: [
      {
        station: 'insulation',
        name: { en: 'Insulation', es: 'Aislante' },
        plan: null,
        alarm: ALARM,
        weeks: [],
      },
    ],
  });

const MAIL = {
  kind: 'mail',
  wants: { events: [], alarms: true, checkpoints: false, clocks: true },
} as const;

describe('an alarm by mail', () => {
  it('comes once, in the words of its reader, and again only where the mail server did not take it', async () => {
    const office = await openPostOffice();
    const house = await openFeedHouse({
      mail: { url: office.url, from: 'studbook@plant.example' },
      asks: { signals, determinations: async () => (await openedEmpty()).determinations },
    });
    office.refuse(451);
    await house.feed().subscribe(wishFor('mara@plant.example', { ...MAIL, language: 'es' }), 'manager');
    await house.later(0);
    expect(office.letters).toStrictEqual([]);
    expect((await house.feed().subscriptions())[0]).toMatchObject({ trouble: 'smtp-451', tries: 1 });

    office.refuse(null);
    await house.later(5_000);
    await house.later(60_000);
    expect(office.letters).toHaveLength(1);
    expect(office.letters[0]).toContain('To: mara@plant.example');
    expect(office.letters[0]?.replace(/=\r\n/g, '')).toContain('9/21 secciones con inconformidad');
    await office.close();
    await house.clear();
  });

  it('is not promised where no mail server is set', async () => {
    const house = await openFeedHouse();
    expect(await house.feed().subscribe(wishFor('mara@plant.example', MAIL), 'manager')).toStrictEqual({
      ok: false,
      why: 'no-mail-server',
    });
    await house.clear();
  });
});

/** A plant without a determination file answers so. */
const openedEmpty = () =>
  Promise.resolve({
    determinations: {
      today: '2026-03-02',
      counting: { lastDay: 'next-workday', daysOff: [0, 6], holidays: [], warnDays: 5 },
      determinations: [],
    },
  });
