import { mkdtempSync, readFileSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { NOTE_TOOLS } from '@libs/ledger';
import { verifyPacket } from '@libs/proof';
import { publishOne } from '../../apps/server/src/composition/checkpoint-schedule';
import { WET, openSmallPlant, orderDouble } from '../support/small-plant';

describe('checkpoints that the server lays ready for people outside', () => {
  it('are one file for each size the ledger had, and hold the plant to what it had recorded', async () => {
    const folder = join(mkdtempSync(join(tmpdir(), 'checkpoints-')), 'checkpoints');
    const small = await openSmallPlant();
    await publishOne(small.plant, folder);
    await publishOne(small.plant, folder);
    await orderDouble(small);
    const evidence = await small.plant.proof.evidenceOf(WET, null);
    const packet = await small.plant.proof.packetOf(evidence!, new Map());

    const files = readdirSync(folder);
    const outcomes = verifyPacket(packet, NOTE_TOOLS, {
      checkpoint: readFileSync(join(folder, files[0] ?? ''), 'utf8'),
    });

    expect(files).toHaveLength(1);
    expect(outcomes.map(({ code }) => code)).toContain('checkpoint-extends');
    await small.clear();
  });
});
