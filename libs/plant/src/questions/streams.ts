import { envelopeOf, typeOf } from '@libs/ledger';
import type { Ledger, Sql } from '@libs/ledger';
import { LOT } from '@libs/record';
import type { Asked } from './asked';

/** '0' follows '/' in every character set there is, so that this is all streams that begin with the kind. */
export const streamsOf =
  (reader: Sql): Asked['streamsOf'] =>
  async (kind) => {
    const rows = await reader.query<{ readonly stream: string }>(
      `SELECT stream FROM event WHERE stream > $1 AND stream < $2 AND version = 1 ORDER BY stream`,
      [`${kind}/`, `${kind}0`],
    );
    return rows.map(({ stream }) => stream);
  };

/** A lot's stream is three events long at most; one that has never more than one was never quarantined. */
export const quarantinedLots =
  (ledger: Pick<Ledger, 'ofStreams'>, reader: Sql): Asked['quarantined'] =>
  async () => {
    const rows = await reader.query<{ readonly stream: string }>(
      `SELECT DISTINCT stream FROM event WHERE stream > $1 AND stream < $2 AND version = 2 ORDER BY stream`,
      [`${LOT.name}/`, `${LOT.name}0`],
    );
    const held = new Map<string, { readonly lot: string; readonly reason: string; readonly since: string }>();
    const streams = rows.map(({ stream }) => stream);
    for (const { stream, schema, data, occurredAt } of streams.length === 0
      ? []
      : await ledger.ofStreams(streams)) {
      const lot = stream.slice(LOT.name.length + 1);
      if (typeOf(schema) === 'LotQuarantined') {
        const { reason } = data;
        held.set(lot, { lot, reason: typeof reason === 'string' ? reason : '', since: occurredAt });
      }
      if (typeOf(schema) === 'LotReleased') held.delete(lot);
    }
    return [...held.values()];
  };

/**
 * Events whose text has a name in it, quoted as JSON quotes it: those that name it, and a few that only seem to. The
 * whole log is read for it, which takes seconds in a plant of some years: asked when a lot or a gauge turns out bad.
 */
export const eventsMentioning =
  (reader: Sql): Asked['mentioning'] =>
  async (text) => {
    const quoted = JSON.stringify(text).replace(/[\\%_]/g, (mark) => `\\${mark}`);
    const rows = await reader.query<{ readonly body: string }>(
      `SELECT body FROM event WHERE body LIKE $1 ESCAPE '\\' ORDER BY position`,
      [`%${quoted}%`],
    );
    return rows.map(({ body }) => envelopeOf(body));
  };
