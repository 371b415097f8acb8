import { NOTE_TOOLS } from '@libs/ledger';
import { allProven, readEvidenceManifest, verifyPacket } from '@libs/proof';
import type { Outcome, PacketFiles } from '@libs/proof';
import { mountLotsFor, tellGood } from '../support/good-work';
import { DRY, HOME, WET, openSmallPlant, orderDouble } from '../support/small-plant';
import type { SmallPlant } from '../support/small-plant';

const codes = (outcomes: readonly Outcome[]): readonly string[] => [
  ...new Set(outcomes.map(({ is, code }) => `${is} ${code}`)),
];

const same = (a: PacketFiles, b: PacketFiles): boolean =>
  [...a.keys()].join() === [...b.keys()].join() &&
  [...a].every(([name, bytes]) => Buffer.from(bytes).equals(b.get(name) ?? Buffer.from('-')));

describe('what a plant can prove to people outside', () => {
  let small: SmallPlant;
  beforeEach(async () => {
    small = await openSmallPlant();
    await orderDouble(small);
    await small.tell('start', { serial: WET, at: 'chassis' });
  });
  afterEach(() => small.clear());

  const grow = async (): Promise<void> => {
    await small.tell('start', { serial: DRY, at: 'chassis' });
  };

  it('a home’s whole history, from any of its serials, under a checkpoint that anyone can check', async () => {
    const { proof } = small.plant;
    const evidence = await proof.evidenceOf(DRY, null);
    const outcomes = verifyPacket(evidence?.files ?? new Map(), NOTE_TOOLS, { key: proof.publicKey() });

    expect(evidence?.home).toBe(HOME);
    expect(evidence?.streams).toStrictEqual(
      expect.arrayContaining([`home/${HOME}`, `section/${WET}`, `section/${DRY}`]),
    );
    expect(codes(outcomes)).toStrictEqual([
      'proven evidence-whole',
      'open packet-unsealed',
      'proven checkpoint-signed',
      'proven events-included',
      'proven stream-complete',
      'proven used-complete',
      'proven home-complete',
      'proven key-known',
      'open later-unknown',
      'open truth-not-shown',
    ]);
    expect(allProven(outcomes)).toBe(true);
  });

  it('the same evidence again at the same position, byte for byte, after the ledger has grown and anew', async () => {
    const before = (await small.plant.proof.evidenceOf(WET, null))!;
    await grow();
    await small.plant.proof.checkpoint();
    const plant = await small.reopened();

    const after = (await plant.proof.evidenceOf(HOME, before.position))!;
    const now = (await plant.proof.evidenceOf(HOME, null))!;

    expect(after.digest).toBe(before.digest);
    expect(same(after.files, before.files)).toBe(true);
    expect(now.digest).not.toBe(before.digest);
  });

  it('a checkpoint at a size nobody asked for at the time', async () => {
    await grow();

    const { size } = await small.plant.proof.checkpoint(3);
    const evidence = await small.plant.proof.evidenceOf(WET, size);

    expect(evidence).toBeUndefined();
    await expect(small.plant.proof.checkpoint(10_000)).rejects.toThrow(/cannot be signed at 10000/);
  });

  it('that it only grew since a checkpoint somebody holds, and whose it is, also after a change of keys', async () => {
    const { proof } = small.plant;
    const held = await proof.checkpoint();
    await proof.changeKey();
    await grow();
    const evidence = await proof.evidenceOf(WET, null);
    const packet = await proof.packetOf(evidence!, new Map([['readme.txt', Buffer.from('hello')]]));

    const outcomes = verifyPacket(packet, NOTE_TOOLS, { checkpoint: held.note });

    expect(held.key).not.toBe(evidence?.checkpoint.key);
    expect(codes(outcomes)).toStrictEqual(
      expect.arrayContaining([
        'proven packet-whole',
        'proven packet-signed',
        'proven key-known',
        'proven checkpoint-extends',
      ]),
    );
    expect(allProven(outcomes)).toBe(true);
  });

  it('under which revision it was judged, and who signed and what was used, as they stood then', async () => {
    await mountLotsFor(small, 'gear-fitted');
    await tellGood(small, WET, 'gear-fitted');
    const evidence = await small.plant.proof.evidenceOf(WET, null);
    const manifest = readEvidenceManifest(evidence?.files.get('evidence/manifest.json') ?? new Uint8Array());

    expect(manifest?.also).toStrictEqual(['rulebook/rulebook']);
    expect(evidence?.events.map(({ schema }) => schema)).toContain('RevisionIssued/1');
    expect(evidence?.streams).toStrictEqual(
      expect.arrayContaining(['lot/chassis-axle-1', 'person/chassis-lead']),
    );
  });

  it('nothing of a serial nobody knows', async () => {
    expect(await small.plant.proof.evidenceOf('nobody', null)).toBeUndefined();
  });

  it('which homes there are', async () => {
    expect(await small.plant.proof.homes()).toMatchObject([{ serial: HOME, sections: [WET, DRY] }]);
  });
});
