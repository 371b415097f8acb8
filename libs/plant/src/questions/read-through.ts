import type { Ledger } from '@libs/ledger';
import type { ReadStream } from '@libs/kernel';

/**
 * Facts as the writer reads them, outside the writer: what is not at hand is loaded and the facts are read again, so
 * that a screen and a decision say the same of the same streams.
 */
export const readThrough = async <A>(
  ledger: Pick<Ledger, 'state'>,
  facts: (read: ReadStream) => A,
): Promise<A> => {
  const known = new Map<string, unknown>();
  for (;;) {
    const missing: (() => Promise<void>)[] = [];
    const answer = facts((kind, id) => {
      const stream = `${kind.name}/${id}`;
      if (known.has(stream)) return heldAs<(typeof kind)['initial']>(known.get(stream));
      missing.push(async () => {
        known.set(stream, await ledger.state(kind, id));
      });
      return kind.initial;
    });
    if (missing.length === 0) return answer;
    for (const load of missing) await load();
  }
};

/** Says to the compiler what the stream's name has said already. */
const heldAs = <S>(state: unknown): S => state as S;
