import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { csvFiles, epcisFile, reportFile, xesFile } from '@libs/packet';
import type { PacketHome } from '@libs/packet';
import Ajv from 'ajv';
import Ajv2020 from 'ajv/dist/2020';
import addFormats from 'ajv-formats';
import { parse } from 'csv-parse/sync';
import { SaxesParser } from 'saxes';
import { tellStory } from '../support/demonstration-plant';
import type { ToldPlant } from '../support/demonstration-plant';

const CASES = join(__dirname, '..', 'reference', 'cases');
const json = (file: string): unknown => JSON.parse(readFileSync(file, 'utf8'));
const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString('utf8');

/** The official schema is not shipped; it is checked where it is provided. */
const OFFICIAL = [
  process.env['EPCIS_SCHEMA'],
  join(__dirname, '../../../shared/reference/standards/epcis/epcis-json-schema-2.0.1.json'),
].find((file) => file !== undefined && existsSync(file));
if (OFFICIAL === undefined) {
  process.stderr.write('\nEPCIS_SCHEMA is not set: EPCIS is held to the plant’s profile alone.\n\n');
}

type Event = { readonly [field: string]: unknown };

describe('a home taken away in the formats of others', () => {
  let told: ToldPlant;
  let home: PacketHome;
  beforeAll(async () => {
    told = await tellStory({ homes: 6, seed: 'packet', lastDay: '2026-11-20' });
    const found = await told.plant.packetHome('H26-1001', await told.plant.head());
    if (found === undefined) throw new Error('The demonstration has no home H26-1001');
    home = found;
  });
  afterAll(() => told.clear());

  const epcis = (): readonly Event[] =>
    (JSON.parse(text(epcisFile(home).bytes)) as { epcisBody: { eventList: Event[] } }).epcisBody.eventList;

  it('has every event of its history in every one of them', () => {
    expect(home.events.length).toBeGreaterThan(100);
    const positions = home.events.map(({ event }) => event.position);

    const history = csvFiles(home).find(({ name }) => name === 'csv/history.csv');
    const rows: Record<string, string>[] = parse(text(history?.bytes ?? Buffer.alloc(0)), { columns: true });
    expect(rows.map((row) => Number(row['position']))).toStrictEqual(positions);
    const xes = [...text(xesFile(home).bytes).matchAll(/studbook:position" value="(\d+)"/g)];
    expect(new Set(xes.map(([, position]) => Number(position)))).toStrictEqual(new Set(positions));
    expect(new Set(epcis().map((event) => event['plant:position']))).toStrictEqual(new Set(positions));
  });

  it('is EPCIS 2.0 by the plant’s own closed profile, which refuses what the standard’s schema lets through', () => {
    const ajv = addFormats(new Ajv2020({ strict: false, allErrors: true }));
    const valid = ajv.compile(json(join(CASES, 'plant-epcis-profile.schema.json')) as object);
    valid(JSON.parse(text(epcisFile(home).bytes)));
    expect(valid.errors?.slice(0, 3)).toBeUndefined();
  });

  (OFFICIAL === undefined ? it.skip : it)('is EPCIS 2.0 by the standard’s own JSON schema 2.0.1', () => {
    const ajv = addFormats(new Ajv({ strict: false, allErrors: true }));
    const valid = ajv.compile(json(OFFICIAL ?? '') as object);
    valid(JSON.parse(text(epcisFile(home).bytes)));
    expect(valid.errors?.slice(0, 3)).toBeUndefined();
  });

  it('repeats in EPCIS what was put right, under the same id and with its declaration', () => {
    const mended = home.events.filter(({ event }) => event.corrects !== undefined);
    const declared = epcis().filter((event) => event['errorDeclaration'] !== undefined);
    expect(declared.length).toBeGreaterThanOrEqual(mended.length);
    for (const { errorDeclaration: _, ...copy } of declared) expect(epcis()).toContainEqual({ ...copy });
  });

  it('is well-formed XES with a trace for each of its units', () => {
    const seen = { traces: 0, events: 0 };
    const parser = new SaxesParser({ xmlns: false as const });
    parser.on('error', (fault) => {
      throw fault;
    });
    parser.on('opentag', ({ name }) => {
      if (name === 'trace') seen.traces += 1;
      if (name === 'event') seen.events += 1;
    });
    parser.write(text(xesFile(home).bytes)).close();
    expect(seen).toStrictEqual({
      traces: new Set(home.events.map(({ serial }) => serial)).size,
      events: home.events.length,
    });
  });

  it('is the same bytes each time it is written, the paper included', async () => {
    const wish = { language: 'en' as const, checkpoint: ['checkpoint line'], attached: [] };
    const [first, second] = [await reportFile(home, wish), await reportFile(home, wish)];
    expect(Buffer.from(first.bytes).equals(Buffer.from(second.bytes))).toBe(true);
    expect(text(epcisFile(home).bytes)).toBe(text(epcisFile(home).bytes));
  });
});
