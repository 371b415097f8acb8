export type ServerSentEvent = { readonly event: string; readonly id: string | null; readonly data: string };
export type ReadStream = { readonly events: readonly ServerSentEvent[]; readonly retry: number | null };

/** Reads a stream as HTML's section 9.2.6 says; held to its published streams in tests/reference. */
export const readStream = (stream: string): ReadStream => {
  const blocks = stream.replaceAll('\r\n', '\n').split('\n\n');
  // What stands after the last blank line is not whole yet.
  const fields = blocks.slice(0, -1).map(fieldsOf);
  const retry = fields.flat().findLast(([name]) => name === 'retry');
  return {
    events: fields.filter((block) => block.some(([name]) => name === 'data')).map(eventOf),
    retry: retry === undefined ? null : Number(retry[1]),
  };
};

type Field = readonly [name: string, value: string];

const fieldsOf = (block: string): readonly Field[] =>
  block
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith(':'))
    .map((line) => {
      const colon = line.indexOf(':');
      return colon < 0 ? [line, ''] : [line.slice(0, colon), line.slice(colon + 1).replace(/^ /, '')];
    });

const eventOf = (fields: readonly Field[]): ServerSentEvent => ({
  event: fields.findLast(([name]) => name === 'event')?.[1] ?? 'message',
  id: fields.findLast(([name]) => name === 'id')?.[1] ?? null,
  data: fields
    .filter(([name]) => name === 'data')
    .map(([, value]) => value)
    .join('\n'),
});
