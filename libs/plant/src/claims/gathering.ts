import type { Sql } from '@libs/ledger';
import { envelopeOf } from '@libs/ledger';
import { gather, nothingGathered } from './gathered';
import type { Gathered } from './gathered';

export type Gathering = () => Promise<Gathered>;

/** Rows a trip: enough that trips do not count, few enough that the writer's reader is not kept for long. */
const PAGE = 5_000;
type BodyRow = { readonly body: string };

/**
 * The log is read once, whole, the first time somebody traces, and from there on only what is new. What is kept is a
 * few hundred bytes an operation: ten thousand homes are held in well under a gigabyte.
 */
export const gatheringFrom = (reader: Sql): Gathering => {
  const gathered = nothingGathered();
  let turn: Promise<unknown> = Promise.resolve();

  const catchUp = async (): Promise<Gathered> => {
    for (;;) {
      const rows = await reader.query<BodyRow>(
        `SELECT body FROM event WHERE position > $1 ORDER BY position LIMIT ${PAGE}`,
        [gathered.position],
      );
      for (const { body } of rows) gather(gathered, envelopeOf(body));
      if (rows.length < PAGE) return gathered;
    }
  };
  return () => {
    const next = turn.then(catchUp, catchUp);
    turn = next;
    return next;
  };
};
