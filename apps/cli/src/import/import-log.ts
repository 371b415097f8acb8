import { basename, extname } from 'node:path';
import type { Plant, Sender } from '@libs/plant';
import { openRulebook } from '@libs/rulebook';
import type { RulebookFiles } from '@libs/rulebook';
import type { Progress } from '../progress';
import { csvLog } from './csv-log';
import { fileDigest, importKey, rowMarks } from './import-key';
import type { ImportSummary } from './import-summary';
import { inFlight } from './in-flight';
import { entryReader } from './log-entry';
import type { LogEntry, ReadEntry } from './log-entry';
import { enrollPeople } from './log-people';
import type { LogRow } from './log-row';
import { timeReader } from './log-time';
import { columnsOf, readMapping, XES_MAPPING } from './mapping';
import type { Mapping } from './mapping';
import { refusalsOf } from './rejected-file';
import type { Refusals } from './rejected-file';
import { scanLog } from './scan-log';
import type { LogScan } from './scan-log';
import { IMPORTER, logTeller } from './tell-log';
import type { LogTeller } from './tell-log';
import { xesLog } from './xes-log';

export type LogImport = {
  readonly plant: Plant;
  readonly file: string;
  readonly mappingFile: string | null;
  readonly progress: Progress;
  readonly isKeyReused: (error: unknown) => boolean;
  /** Given the rulebook made from the log, where one had to be made. */
  readonly writeRulebook: (files: RulebookFiles) => void;
};

type Reading = {
  readonly rows: () => AsyncIterable<LogRow>;
  /** One reader for each reading of the file. */
  readonly reader: () => (row: LogRow) => ReadEntry;
  readonly mapping: Mapping;
};

/** Any plant's operation log, read twice: once to learn what there is, once to tell it as if it had been scanned. */
export const importLog = async (wish: LogImport): Promise<ImportSummary> => {
  const { plant, file, progress } = wish;
  const reading = readingOf(wish);
  const digest = await fileDigest(file);
  const scan = await scanLog(reading.rows(), reading.reader(), (rows) =>
    progress.at(rows, null, 'Rows read'),
  );
  progress.end();

  await prepare(wish, reading.mapping, digest, scan);
  const people = await enrollPeople(plant, scan.people, digest, (index) =>
    senderAt(digest, `enroll ${index}`),
  );
  const { components } = await plant.asks.plant();
  const { mapping } = reading;
  const teller = logTeller({
    plant,
    scan,
    people,
    defectOf: (entry) => mapping.defect ?? (components.length === 0 ? openDefect(entry) : null),
    shippedAfter: mapping.shippedAfter,
    lotKind: mapping.lotKind,
    isKeyReused: wish.isKeyReused,
  });
  return tellRows(wish, reading, scan, teller);
};

/** An open rulebook lists no codes, and takes these. */
const openDefect = ({ rejected }: LogEntry): { component: string; symptom: string } => ({
  component: 'work',
  symptom: rejected > 0 ? 'rejected' : 'done-over',
});

const readingOf = ({ file, mappingFile }: LogImport): Reading => {
  const xes = extname(file).toLowerCase() === '.xes';
  if (!xes && mappingFile === null) throw new MappingNeeded(file);

  const mapping = mappingFile === null ? XES_MAPPING : readMapping(mappingFile);
  return {
    rows: () => (xes ? xesLog(file) : csvLog(file, mapping.delimiter, columnsOf(mapping))),
    reader: () => entryReader(mapping, timeReader(mapping.timeFormat, mapping.zone)),
    mapping,
  };
};

export class MappingNeeded extends Error {
  constructor(file: string) {
    super(`${file}: say which columns mean what with --mapping FILE (studbook import --help shows one)`);
    this.name = 'MappingNeeded';
  }
}

/** What an import says before its first row has keys of the file's. */
const senderAt = (digest: string, what: string): Sender => ({
  key: importKey(rowMarks()(`${digest} ${what}`, ''), 0),
  actor: IMPORTER,
  assurance: 'token',
});

/** Opens the plant, and gives it an open rulebook of the log's own operations where it has none. */
const prepare = async (wish: LogImport, mapping: Mapping, digest: string, scan: LogScan): Promise<void> => {
  const { plant, file } = wish;
  const name = mapping.plant ?? basename(file, extname(file));
  await openOnce(wish, name, mapping.zone, senderAt(digest, 'open'));
  const { revision } = await plant.asks.plant();
  if (revision !== null || scan.first === null) return;

  const { stations, operations } = scan;
  const files = openRulebook({ name, zone: mapping.zone, stations, operations });
  const issued = await plant.issueRevision(files, scan.first, senderAt(digest, 'issue'));
  if (!issued.ok) throw new Error(`The rulebook made from ${file}: ${JSON.stringify(issued.problems)}`);
  wish.writeRulebook(files);
};

/** A mapping that has changed since cannot open the plant a second time, and need not. */
const openOnce = async (
  { plant, isKeyReused }: LogImport,
  name: string,
  zone: string,
  sender: Sender,
): Promise<void> => {
  try {
    await plant.open(name, zone, false, sender);
  } catch (error) {
    if (!isKeyReused(error)) throw error;
  }
};

const tellRows = async (
  { plant, file, progress }: LogImport,
  { rows, reader }: Reading,
  scan: LogScan,
  teller: LogTeller,
): Promise<ImportSummary> => {
  const refusals = refusalsOf(file);
  const read = reader();
  const flight = inFlight();
  const lotRefusals = await receiveLots(teller, scan);
  let passedOver = 0;
  let done = 0;

  const tell = async (entry: LogEntry, row: LogRow): Promise<void> => {
    const refusal = lotRefusals.get(entry.lot ?? '') ?? (await teller.tell(entry));
    if (refusal !== null) refuse(refusals, row, refusal);
    progress.at((done += 1), scan.rows, 'Rows told');
  };
  for await (const row of rows()) {
    const found = read(row);
    if (found.is === 'passed-over') passedOver += 1;
    else if (found.is === 'refused') refuse(refusals, row, found.reason);
    else await flight.add(teller.lane(found.entry), () => tell(found.entry, row));
  }
  await flight.settled();
  progress.end();

  const refused = refusals.count();
  const rejectedFile = await refusals.close();
  const taken = scan.rows - passedOver - refused;
  return { file, rows: scan.rows, taken, passedOver, refused, rejectedFile, position: await plant.head() };
};

/** Lots first: a row that uses one may come in any lane. A lot that is refused takes its rows with it. */
const receiveLots = async (teller: LogTeller, { lots }: LogScan): Promise<ReadonlyMap<string, string>> => {
  const flight = inFlight();
  const refused = new Map<string, string>();
  for (const entry of lots) {
    await flight.add(entry.lot ?? '', async () => {
      const refusal = await teller.receiveLot(entry);
      if (refusal !== null) refused.set(entry.lot ?? '', refusal);
    });
  }
  await flight.settled();
  return refused;
};

const refuse = (refusals: Refusals, row: LogRow, reason: string): void =>
  refusals.add(row.line, reason, JSON.stringify(row.fields));
