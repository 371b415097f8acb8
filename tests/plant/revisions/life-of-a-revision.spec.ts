import { ROUTES } from '@libs/contracts';
import type { AnswerOf, SentBodyOf } from '@libs/contracts';
import type { RulebookFiles } from '@libs/rulebook';
import { openSmallPlant } from '../../support/small-plant';
import type { SmallPlant } from '../../support/small-plant';
import { buildUpTo } from '../../support/build-up';

let small: SmallPlant;
let serial: string;

const sender = (actor: string, key: string) => ({ actor, key, assurance: 'pin' as const });

/** One cell changed in one file, as a quality manager does it. */
const changed = (file: string, from: string, to: string): RulebookFiles => {
  const text = small.files[file] ?? '';
  expect(text).toContain(from);
  return { ...small.files, [file]: text.replace(from, to) };
};

/** A published limit, so that the design is touched. */
const CLOSER = () => changed('values.csv', '>= 0.375', '>= 0.5');

const propose = (files: RulebookFiles, more: Partial<SentBodyOf<'proposal'>> = {}, key = 'p-1') =>
  small.plant.rulebook.propose(
    ROUTES.proposal.body.parse({ files, base: 1, ...more }),
    sender('manager', key),
  );
const approve = (
  proposal: string,
  agency: NonNullable<SentBodyOf<'approval'>['agency']> | null,
  by = 'administrator',
  key = `approve-${proposal}`,
) => small.plant.rulebook.approve(proposal, agency === null ? {} : { agency }, sender(by, key));

const LETTER = { reference: 'letter 26-114', approvedOn: '2026-03-01' };
const said = (sections: AnswerOf<'examination'>['sections']) =>
  sections.map((one) => [one.serial, one.findings.map(({ rule }) => rule)]);

beforeEach(async () => {
  small = await openSmallPlant();
  serial = await buildUpTo(small.plant, { home: 'T-500', station: 'floor', except: [] });
});
afterEach(() => small.clear());

describe('a revision that is drafted', () => {
  it('is told of every problem at once, with file, row and column', async () => {
    const values = (small.files['values.csv'] ?? '').replace('>= 0.375', '>= three eighths');
    const covers = (small.files['covers.csv'] ?? '').replace('decked,floor-piped', 'decked,floor-pipd');
    const examined = await small.plant.rulebook.examine({
      ...small.files,
      'values.csv': values,
      'covers.csv': covers,
    });
    expect(examined.problems.map(({ file, row, column }) => [file, row, column])).toStrictEqual(
      expect.arrayContaining([
        ['values.csv', 2, 'required'],
        ['covers.csv', 3, 'hides'],
      ]),
    );
    expect(examined.changes).toStrictEqual([]);
  });

  it('is compared with the latest in words, and tried on the sections on the line', async () => {
    const examined = await small.plant.rulebook.examine(CLOSER());
    expect(examined.changes.map(({ says, touches }) => [says.en, touches])).toStrictEqual([
      ['Serial number stamped: Character height: at least 3/8 in becomes at least 1/2 in', 'design'],
    ]);
    expect(examined.changes[0]?.says.es).toContain(' pasa a ');
    expect(examined.looked).toBeGreaterThan(0);
    expect(said(examined.sections).find(([one]) => one === serial)).toStrictEqual([
      serial,
      ['value-out-of-limits'],
    ]);
  });
});

describe('a revision that is handed in', () => {
  it('is issued once somebody else approves it, and not by its drafter', async () => {
    expect(await propose(CLOSER())).toMatchObject({ ok: true });
    expect(await approve('p-1', LETTER, 'manager')).toMatchObject({
      ok: false,
      rejection: { code: 'approved-by-own-hand' },
    });
    expect(await approve('p-1', LETTER, 'administrator', 'second')).toMatchObject({
      ok: true,
      answer: { revision: 2 },
    });
    const book = await small.plant.rulebook.book({ revision: null });
    expect(book?.issued[0]).toMatchObject({
      revision: 2,
      approvedBy: 'administrator',
      draftedBy: 'Mara',
      agency: LETTER,
      inForce: true,
    });
  });

  it('takes no effect without the agency’s reference and date where it changes the design', async () => {
    await propose(CLOSER());
    expect(await approve('p-1', null)).toMatchObject({
      ok: false,
      rejection: { code: 'agency-approval-needed' },
    });
    expect(
      await approve('p-1', { ...LETTER, approvedOn: '2026-04-01' }, 'administrator', 'k2'),
    ).toMatchObject({
      ok: false,
      rejection: { code: 'agency-approval-later' },
    });
    expect((await small.plant.asks.plant()).revision).toBe(1);
  });

  it('needs none where only a name is mended', async () => {
    await propose(changed('plant.yaml', 'en: Chassis', 'en: Chassis hall'));
    expect(await approve('p-1', null)).toMatchObject({ ok: true });
  });

  it('has to be compared anew once another was issued in between', async () => {
    await propose(CLOSER());
    await propose(changed('plant.yaml', 'en: Chassis', 'en: Chassis hall'), {}, 'p-2');
    await approve('p-2', null);
    expect(await approve('p-1', LETTER)).toMatchObject({
      ok: false,
      rejection: { code: 'proposal-outdated' },
    });
    expect(await propose(CLOSER(), {}, 'p-3')).toMatchObject({
      ok: false,
      rejection: { code: 'proposal-outdated' },
    });
  });

  it('may be sent back, and is over then', async () => {
    await propose(CLOSER(), { note: 'As the letter says' });
    const { proposals } = await small.plant.rulebook.proposals('administrator');
    expect(proposals).toMatchObject([
      { proposal: 'p-1', draftedBy: 'Mara', own: false, note: 'As the letter says' },
    ]);
    await small.plant.rulebook.sendBack('p-1', { note: 'Zone II too' }, sender('administrator', 'back'));
    expect((await small.plant.rulebook.proposals('manager')).proposals).toStrictEqual([]);
    expect(await approve('p-1', LETTER)).toMatchObject({ ok: false, rejection: { code: 'proposal-over' } });
  });

  it('is not effective before its day, and homes that start until then are judged by the one before', async () => {
    await propose(CLOSER(), { effectiveFrom: '2026-03-10T06:00:00.000-05:00' });
    await approve('p-1', LETTER);
    expect((await small.plant.asks.plant()).revision).toBe(1);
    expect(
      await small.plant.rulebook.apply('T-500', { revision: 2 }, sender('manager', 'too-soon')),
    ).toMatchObject({ ok: false, rejection: { code: 'revision-not-in-force' } });

    const before = await buildUpTo(small.plant, { home: 'T-600', station: 'floor', except: [] });
    small.clock.now = Date.parse('2026-03-10T12:00:00.000-05:00');
    expect((await small.plant.asks.plant()).revision).toBe(2);
    expect((await small.plant.rulebook.buildPlan(before))?.revision).toBe(1);
  });
});

describe('a home on the line', () => {
  it('keeps its revision until somebody decides otherwise, who is shown what changes', async () => {
    await propose(CLOSER());
    await approve('p-1', LETTER);
    expect((await small.plant.rulebook.buildPlan(serial))?.revision).toBe(1);

    const preview = await small.plant.rulebook.preview('T-500', 2);
    expect(
      preview?.sections.find((one) => one.serial === serial)?.changed.map(({ says }) => says.en),
    ).toStrictEqual(['Serial number stamped: Character height: at least 3/8 in becomes at least 1/2 in']);

    const applied = await small.plant.rulebook.apply('T-500', { revision: 2 }, sender('manager', 'apply'));
    expect(applied).toMatchObject({ ok: true });
    expect((await small.plant.rulebook.buildPlan(serial))?.revision).toBe(2);
    const types = await small.typesOf(serial);
    expect(types.slice(-3)).toStrictEqual(['RevisionApplied', 'DefectRecorded', 'HoldPlaced']);
  });

  it('is asked for a value from then on that nobody was asked for before', async () => {
    const rows = small.files['values.csv'] ?? '';
    const first = rows.split(/\r?\n/)[3] ?? '';
    const added = first
      .replace('read-back', 'photographed')
      .replace('Read back equals the order', 'Photographed')
      .replace(/"Leído[^"]*"/, 'Fotografiado');
    const files = { ...small.files, 'values.csv': `${rows.trimEnd()}\n${added}\n` };
    await propose(files, { note: 'A picture of every stamp' });
    await approve('p-1', LETTER);
    const applied = await small.plant.rulebook.apply('T-500', { revision: 2 }, sender('manager', 'apply'));
    expect(applied).toMatchObject({ ok: true });
    const section = await small.plant.asks.section(serial, 'all');
    expect(section?.holds.map(({ characteristic, reason }) => [reason, characteristic])).toContainEqual([
      'value-missing',
      'photographed',
    ]);
  });
});
