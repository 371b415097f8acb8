import type { AnswerOf } from '@libs/contracts';
import { jsonAs } from '../../api/json';
import { addressOf } from '../../api/paths';
import type { Wanted } from '../../api/paths';

export type RetroLine = AnswerOf<'retroCheck'>;

/** The answer line by line as it comes: newline-delimited JSON. */
export async function* retroLines(wanted: Wanted, signal: AbortSignal): AsyncGenerator<RetroLine> {
  const response = await fetch(addressOf('retroCheck', wanted).path, { signal });
  if (!response.ok || response.body === null) throw new TypeError(`HTTP ${String(response.status)}`);
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    const lines = (rest + value).split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) yield jsonAs<RetroLine>(line);
  }
}
