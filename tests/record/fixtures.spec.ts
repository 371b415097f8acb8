import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Envelope, NewEvent, StreamKind } from '@libs/kernel';
import {
  ACCOUNT,
  AGENCY_STREAM,
  CHART,
  CLAIM,
  CONTAINMENT,
  DELIVERY,
  DETERMINATION,
  HOME,
  INSTRUMENT,
  LABEL,
  LABEL_SUPPLY,
  LOT,
  PERSON,
  PLANT,
  RULEBOOK,
  SECTION,
  STATION,
} from '@libs/record';
import { events } from '../style/event-catalogue';

const FOLDER = join(__dirname, 'fixtures');
/** SHA-256 over all fixtures: they are never edited. A new shape is a new file, and a new sum. */
const SUM = 'SUMS';

const files = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
const read = (name: string): Envelope => JSON.parse(readFileSync(join(FOLDER, name), 'utf8')) as Envelope;
const recorded = files.map(read).sort((one, other) => one.position - other.position);

type AnyKind = Pick<
  StreamKind<never, unknown, NewEvent, { readonly code: string }, never>,
  'name' | 'initial'
> & {
  readonly evolve: (state: unknown, event: never) => unknown;
};
const KINDS: readonly AnyKind[] = [
  ACCOUNT,
  AGENCY_STREAM,
  CHART,
  CLAIM,
  CONTAINMENT,
  DELIVERY,
  DETERMINATION,
  HOME,
  INSTRUMENT,
  LABEL,
  LABEL_SUPPLY,
  LOT,
  PERSON,
  PLANT,
  RULEBOOK,
  SECTION,
  STATION,
].map((kind) => kind as unknown as AnyKind);

const typeOf = ({ schema }: Envelope): string => schema.slice(0, schema.indexOf('/'));

describe('every event that was ever recorded', () => {
  it('has an example that is kept', () => {
    const kept = new Set(recorded.map(typeOf));
    expect(
      events()
        .map(({ name }) => name)
        .filter((name) => !kept.has(name)),
    ).toStrictEqual([]);
  });

  it('has an example that nobody has edited', () => {
    const sums = files.toSorted().map(
      (name) =>
        `${createHash('sha256')
          .update(readFileSync(join(FOLDER, name)))
          .digest('hex')}  ${name}\n`,
    );
    expect(sums.join('')).toBe(readFileSync(join(FOLDER, SUM), 'utf8'));
  });

  it('is still understood: the whole history reads to the state it came to then', () => {
    const states = new Map<string, unknown>();
    for (const event of recorded) {
      const kind = KINDS.find(({ name }) => event.stream.startsWith(`${name}/`));
      if (kind === undefined) throw new Error(`No kind reads ${event.stream}`);
      const before = states.get(event.stream) ?? kind.initial;
      states.set(event.stream, kind.evolve(before, { ...event, type: typeOf(event) } as never));
    }
    expect(states.get('section/F-100A')).toMatchObject({
      kind: 'section',
      home: 'F-100',
      stage: 'shipped',
      revision: 1,
      station: null,
      label: 'ABC123456',
      holds: [],
      defects: [],
      closed: ['k-1', 'k-0', 'k-2'],
      shopsLeft: ['wall-shop'],
      work: { 'gas-piping-tested': { position: 23, proof: 'signed', except: ['kitchen'] } },
    });
    expect(states.get('home/F-100')).toMatchObject({ kind: 'home', stage: 'on-line', revision: 1 });
    expect(states.get('lot/S-7')).toMatchObject({ kind: 'strap', quarantined: false });
    expect(states.get('station/wall-set')).toStrictEqual({ mounted: {}, held: null });
    expect(states.get('label/ABC123456')).toStrictEqual({
      serial: 'F-100A',
      became: 'used',
      replacedBy: null,
    });
    expect(states.get('section/F-200A')).toMatchObject({
      label: 'ABC000103',
      seen: ['rough-in'],
      redTags: [],
      closed: ['red-tag-R-17'],
    });
    expect(states.get('label/ABC000102')).toMatchObject({ became: 'replaced', replacedBy: 'ABC000103' });
    expect(states.get('agency/agency')).toMatchObject({ observations: [{ standing: 'closed' }] });
    expect(states.get('person/p-101')).toStrictEqual({
      enrolled: false,
      roles: [],
      crew: null,
      qualifications: [],
    });
    expect(states.get('claim/C-1')).toMatchObject({
      opened: { component: 'outlet' },
      asFound: { pointsTo: ['electric-trimmed'] },
    });
    expect(states.get('determination/D-1')).toMatchObject({
      initial: [{ severity: 'serious-defect' }],
      reported: { reportedOn: '2027-02-20' },
    });
    expect(states.get('home/F-300')).toMatchObject({
      design: { wind: 'II' },
      deviations: [{ operation: 'decked', reference: 'letter 26-118' }],
    });
  });
});
