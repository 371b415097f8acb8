import type { Meta, ReadStream, Recorded, StreamKind } from '@libs/kernel';
import { accept, reject } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import type { Asking } from '@libs/ledger';

/** An event of the size and make of those a station sends all day: 630 bytes as stored. */
type WorkRecorded = {
  readonly type: 'WorkRecorded';
  readonly data: {
    readonly operation: string;
    readonly values: readonly {
      readonly characteristic: string;
      readonly value: string;
      readonly unit: string;
    }[];
    readonly lots: readonly string[];
    readonly proof: string;
  };
  readonly revision: number;
  readonly planDigest: string;
};
type RecordWork = { readonly type: 'RecordWork'; readonly data: WorkRecorded['data'] };
type Section = { readonly entries: number; readonly last: string };
type StationFacts = { readonly lots: readonly string[] };

const station = {
  name: 'station',
  initial: { lots: [] as readonly string[] },
  evolve: (state: StationFacts) => state,
};

const PLAN_DIGEST = '9f64a747e1b97f131fabb6b447296c9b6f0201e79fb3c5356e6c77e89b6a806a';

const work: StreamKind<
  RecordWork,
  Section,
  WorkRecorded,
  { readonly code: 'lot-not-mounted' },
  StationFacts
> = {
  name: 'section',
  initial: { entries: 0, last: '' },
  decide: ({ data }, _section, { lots }) =>
    lots.length > 0 && data.lots.some((lot) => !lots.includes(lot))
      ? reject({ code: 'lot-not-mounted' })
      : accept({ type: 'WorkRecorded', data, revision: 12, planDigest: PLAN_DIGEST }),
  evolve: (section, event: Recorded<WorkRecorded>) => ({
    entries: section.entries + 1,
    last: event.data.operation,
  }),
};

/** Sections on the line and waiting beside it. */
const SECTIONS = 60;

const serialOf = (n: number): string => `S-2026-${String(1_000 + (n % SECTIONS))}`;

export const workOf = (n: number): WorkRecorded['data'] => ({
  operation: `op-${n % 40}`,
  values: [{ characteristic: 'nail-spacing', value: '6.25', unit: '[in_i]' }],
  lots: ['L-4471'],
  proof: 'signed',
});

export const askingOf = (run: string, n: number): Asking => {
  const command: RecordWork = { type: 'RecordWork', data: workOf(n) };
  const facts = (read: ReadStream): StationFacts => read(station, 'walls');
  return {
    parts: [partOf({ kind: work, id: serialOf(n), command, facts })],
    meta: metaOf(run, n),
    content: JSON.stringify(command),
  };
};

const metaOf = (run: string, n: number): Meta => ({
  key: `0199c0de-${run}-7${(n >>> 16).toString(16).padStart(3, '0')}-8000-${n.toString(16).padStart(12, '0')}`,
  actor: '7d1c2a90',
  assurance: 'pin',
  occurredAt: '2026-03-02T07:30:00.000-06:00',
  device: 't-07',
  deviceSeq: n,
  skewMs: 12,
  via: 'tablet',
  station: 'walls',
});
