import type { ClaimRow, HomeRow, TraceInput, WorkRow } from '@libs/tracing';

/** A small plant: home n was built on day n; who strapped it and from which lot is for the test to say. */
export type SmallHome = {
  readonly crew: string | null;
  readonly lot: string | null;
  readonly installer?: string;
  readonly claimed?: boolean;
  readonly asFound?: string;
  readonly marks?: WorkRow['marks'];
};

const dayOf = (at: number): string => new Date(Date.UTC(2025, 0, 1 + at)).toISOString().slice(0, 10);

export const smallPlant = (homes: readonly SmallHome[]): TraceInput => ({
  component: 'floor-strap',
  symptom: 'few-fasteners',
  asOf: '2026-11-01',
  claims: homes.flatMap(({ claimed, asFound }, at): readonly ClaimRow[] =>
    claimed === true
      ? [
          {
            claim: `C${at}`,
            home: `H${at}`,
            section: null,
            component: 'floor-strap',
            symptom: 'few-fasteners',
            place: null,
            noticedOn: '2026-03-01',
            asFound: asFound === undefined ? null : { pointsTo: [asFound], speaksAgainst: [] },
          },
        ]
      : [],
  ),
  homes: homes.map((home, at) => homeRow(home, at)),
  lots: [],
  faults: [
    {
      component: 'floor-strap',
      symptom: 'few-fasteners',
      causes: [{ operation: 'floor-strapped', weight: 'a' }],
      elsewhere: [{ cause: 'x-set', weight: 'b' }],
    },
  ],
  operations: [
    { operation: 'floor-strapped', station: 'wall-set' },
    { operation: 'wired', station: 'rough-in' },
  ],
  patterns: [],
});

const homeRow = ({ crew, lot, installer, marks }: SmallHome, at: number): HomeRow => ({
  home: `H${at}`,
  sections: [{ serial: `S${at}`, role: null }],
  model: 'M1',
  builtOn: dayOf(at),
  occupiedOn: dayOf(at + 60),
  where: 'sold',
  hauler: null,
  installer: installer ?? null,
  retailer: null,
  work: [
    {
      unit: `S${at}`,
      operation: 'floor-strapped',
      station: 'wall-set',
      at: dayOf(at),
      crew,
      shift: null,
      lots: lot === null ? [] : [lot],
      instruments: [],
      revision: null,
      marks: marks ?? [],
    },
  ],
});

/** Eighty homes, crews A and B in turn; the named share of crew A's are claimed. */
export const twoCrews = (claimed: (at: number) => boolean): readonly SmallHome[] =>
  Array.from({ length: 80 }, (_, at) => ({
    crew: at % 2 === 0 ? 'A' : 'B',
    lot: `L${Math.floor(at / 8)}`,
    claimed: claimed(at),
  }));
