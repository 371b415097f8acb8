import type { Meta } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import type { Ledger } from '@libs/ledger';
import { ACCOUNT } from '@libs/record';
import type { AccessNote } from './access-notes';
import type { AccessRows } from './access-rows';

/** How many notes are taken into the ledger at a time. */
const AT_ONCE = 100;

/**
 * Takes what was noted into the ledger of accesses. A note is dropped once the ledger has it; one that was taken
 * twice, after a crash in between, has the same key and stands there once.
 */
export const takeNotes = async (rows: AccessRows, ledger: Pick<Ledger, 'ask'>): Promise<number> => {
  const waiting = await rows.notes(AT_ONCE);
  // All at once: the writer keeps their order, and commits them together.
  await Promise.all(waiting.map(({ key, note }) => take(ledger, key, noteOf(note))));
  await rows.dropNotes(waiting.map(({ key }) => key));
  return waiting.length;
};

const take = async (
  ledger: Pick<Ledger, 'ask'>,
  key: string,
  { at, by, event }: AccessNote,
): Promise<void> => {
  const meta: Meta = {
    key,
    actor: by,
    assurance: 'session',
    occurredAt: at,
    device: null,
    deviceSeq: null,
    skewMs: null,
    via: 'tablet',
    station: null,
  };
  const part = partOf({
    kind: ACCOUNT,
    id: event.data.account,
    command: { type: 'NoteAccess', data: event },
    facts: () => ({}),
  });
  const outcome = await ledger.ask({ parts: [part], meta, content: JSON.stringify(event) });
  if (!outcome.ok) throw new Error(`${event.type} was not taken into the ledger: ${outcome.rejection.code}`);
};

/** Written by accessNotes, and read nowhere else. */
const noteOf = (text: string): AccessNote => JSON.parse(text) as AccessNote;
