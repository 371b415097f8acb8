import { createReadStream } from 'node:fs';
import { SaxesParser } from 'saxes';
import type { SaxesTagPlain } from 'saxes';
import { LogUnreadable } from './log-row';
import type { LogRow } from './log-row';

/** Attribute elements of IEEE 1849 whose value is a text of its own. Lists and containers hold further ones. */
const ATTRIBUTES = new Set(['string', 'date', 'int', 'float', 'boolean', 'id']);
/** A trace's own attributes are told apart from its events' by this prefix: `trace:concept:name` is the case. */
const OF_TRACE = 'trace:';

/** Events of an XES file (IEEE 1849) in the order they stand, each with its trace's attributes. Read as a stream. */
export async function* xesLog(file: string): AsyncGenerator<LogRow> {
  const reading = reader(file);
  for await (const chunk of createReadStream(file, 'utf8') as AsyncIterable<string>) {
    reading.parser.write(chunk);
    yield* reading.rows.splice(0);
  }
  reading.parser.close();
  yield* reading.rows.splice(0);
  if (!reading.sawLog()) throw new LogUnreadable(file, null, 'no <log> element: this is not XES (IEEE 1849)');
}

type Reading = {
  readonly parser: SaxesParser<{ xmlns: false; fileName: string }>;
  readonly rows: LogRow[];
  readonly sawLog: () => boolean;
};

const reader = (file: string): Reading => {
  const parser = new SaxesParser({ xmlns: false as const, fileName: file });
  const rows: LogRow[] = [];
  const open: string[] = [];
  let trace: Record<string, string> = {};
  let event: { line: number; fields: Record<string, string> } | null = null;
  let log = false;

  /** Only what stands right under a trace or an event is its attribute: nested ones are remarks on an attribute. */
  const takeAttribute = ({ name, attributes }: SaxesTagPlain): void => {
    const { key, value } = attributes;
    const parent = open.at(-1);
    if (!ATTRIBUTES.has(name) || key === undefined || value === undefined) return;
    if (parent === 'event' && event !== null) event.fields[key] = value;
    if (parent === 'trace') trace[OF_TRACE + key] = value;
  };

  parser.on('error', (error) => {
    throw new LogUnreadable(file, parser.line, error.message.replace(/^.*?:\d+:\d+: /, ''));
  });
  parser.on('opentag', (tag) => {
    if (tag.name === 'log') log = true;
    if (tag.name === 'trace') trace = {};
    if (tag.name === 'event') event = { line: parser.line, fields: {} };
    takeAttribute(tag);
    open.push(tag.name);
  });
  parser.on('closetag', ({ name }) => {
    open.pop();
    if (name !== 'event' || event === null) return;
    rows.push({ line: event.line, fields: { ...trace, ...event.fields } });
    event = null;
  });
  return { parser, rows, sawLog: () => log };
};
