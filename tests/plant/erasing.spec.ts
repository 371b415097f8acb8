import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { NOTE_TOOLS } from '@libs/ledger';
import { ROUTES } from '@libs/contracts';
import { openPlantAt } from '@libs/plant';
import type { Plant, Sender } from '@libs/plant';
import { allProven, unpackedFiles, verifyPacked } from '@libs/proof';
import { demonstrationRulebookFiles } from '../support/demonstration-rulebook';
import { buildUpTo } from '../support/build-up';

const sender = (key: string, actor = 'manager'): Sender => ({ key, actor, assurance: 'pin' });
const NAME = 'Leonora Vanishing';
const NOTE = 'My cousin at Prairie Road helped me here';

/** Goal: who asks to be erased is found nowhere any more, and nobody can tell a packet's evidence from the one before. */
describe('erasing a person', () => {
  let folder: string;
  let plant: Plant;
  const open = (): Promise<Plant> =>
    openPlantAt({ at: { file: join(folder, 'ledger.db') }, keys: join(folder, 'keys'), name: 'Test plant' });

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'erasing-'));
    plant = await open();
    await plant.open('Test plant', 'America/Chicago', true, sender('open'));
    const issued = await plant.issueRevision(
      demonstrationRulebookFiles(),
      '2026-01-01T00:00:00.000-06:00',
      sender('issue'),
    );
    if (!issued.ok) throw new Error(JSON.stringify(issued.problems));
    const people = [
      { person: 'manager', name: 'Mara', roles: ['quality-manager'], crew: 'quality', stations: [] },
      { person: 'p-7', name: NAME, roles: ['station-lead'], crew: 'floor', stations: [] },
    ];
    for (const one of people) await plant.enroll(one, sender(`enroll-${one.person}`));
    await buildUpTo(plant, { home: 'T-700', station: 'floor', except: [] });
    const body = ROUTES.hold.body.parse({ serial: 'T-700A', reason: 'look-again', note: NOTE });
    const told = await plant.tell.hold(body, sender('note', 'p-7'), {});
    if (!told.ok) throw new Error(JSON.stringify(told.rejection));
  });
  afterEach(async () => {
    await plant.close();
    rmSync(folder, { recursive: true });
  });

  const said = async (of: Plant): Promise<string> => {
    const packet = await of.packet('T-700', null);
    const files = unpackedFiles(packet?.zip ?? new Uint8Array())?.files ?? new Map<string, Uint8Array>();
    return JSON.stringify([
      await of.people(),
      await of.asks.history('T-700'),
      [...files.values()].map((bytes) => Buffer.from(bytes).toString('utf8')),
    ]);
  };

  it('takes name and notes off every screen and out of every packet', async () => {
    expect(await said(plant)).toContain(NAME);
    expect(await said(plant)).toContain(NOTE);

    expect(await plant.erase('p-7', sender('erase'))).toBe(true);
    const after = await said(plant);

    expect(after).not.toContain(NAME);
    expect(after).not.toContain(NOTE);
    expect(after).toContain('p-7');
    expect((await plant.people()).map(({ person }) => person)).not.toContain('p-7');
  });

  it('leaves every proof, and the same evidence at the same position, byte for byte', async () => {
    const at = await plant.head();
    const before = await plant.packet('T-700', at);
    const evidence = (await plant.proof.evidenceOf('T-700', at))!;
    await plant.erase('p-7', sender('erase'));
    await plant.close();
    plant = await open();

    const after = (await plant.packet('T-700', at))!;
    const again = (await plant.proof.evidenceOf('T-700', at))!;

    expect(after.evidence).toBe(before?.evidence);
    for (const [name, bytes] of evidence.files) {
      expect([name, Buffer.from(again.files.get(name) ?? []).equals(Buffer.from(bytes))]).toStrictEqual([
        name,
        true,
      ]);
    }
    expect(allProven(verifyPacked(before!.zip, NOTE_TOOLS))).toBe(true);
    expect(allProven(verifyPacked(after.zip, NOTE_TOOLS))).toBe(true);
  });

  it('is done again on opening where a backup of the keys from before was brought back', async () => {
    const backup = join(folder, 'backup');
    cpSync(join(folder, 'keys'), backup, { recursive: true });
    await plant.erase('p-7', sender('erase'));
    await plant.close();
    rmSync(join(folder, 'keys'), { recursive: true });
    cpSync(backup, join(folder, 'keys'), { recursive: true });

    plant = await open();

    expect(await said(plant)).not.toContain(NAME);
    const file = `${Buffer.from('p-7').toString('hex')}.key`;
    expect(readdirSync(join(folder, 'keys', 'people'))).not.toContain(file);
    expect(readFileSync(join(folder, 'keys', 'erased.jsonl'), 'utf8')).toBe('"p-7"\n');
  });

  it('keeps what the law wants for the life of the home, whoever wrote it, and lets go of what the complainant said', async () => {
    const complaint = ROUTES.complaint.body.parse({
      claim: 'C-1',
      receivedOn: '2026-03-02',
      source: 'owner',
      home: 'T-700',
      words: 'Call me, Prairie Road 7',
      noFailureBecause: 'The door was locked',
    });
    const told = await plant.tell.complaint(complaint, sender('complaint', 'p-7'), {});
    if (!told.ok) throw new Error(JSON.stringify(told.rejection));

    await plant.erase('p-7', sender('erase'));
    expect(await plant.asks.claim('C-1')).toMatchObject({
      words: 'Call me, Prairie Road 7',
      because: 'The door was locked',
    });
    expect(await plant.erase('claim:C-1', sender('erase-owner'))).toBe(true);
    expect(await plant.asks.claim('C-1')).toMatchObject({ words: null, because: 'The door was locked' });
  });

  it('is of somebody who was here', async () => {
    expect(await plant.erase('p-8', sender('erase'))).toBe(false);
    expect(await plant.erase('claim:C-9', sender('erase-2'))).toBe(false);
  });
});
