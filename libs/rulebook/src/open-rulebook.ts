import { stringify } from 'yaml';
import type { RulebookFiles } from './rulebook';

type Log = {
  readonly name: string;
  readonly zone: string;
  readonly stations: readonly string[];
  readonly operations: readonly { readonly id: string; readonly station: string }[];
};

/** A log says who worked where, and nothing of crews: one stands for all. */
const CREW = { id: 'crew', en: 'Crew', es: 'Cuadrilla' };

/** A rulebook for a log that came without one: its operations and stations, no order enforced. */
export const openRulebook = ({ name, zone, stations, operations }: Log): RulebookFiles => ({
  'plant.yaml': stringify({
    name,
    zone,
    enforced: false,
    stations: stations.map((id, index) => ({ id, pos: index + 1, kind: 'line', en: id, es: id })),
    crews: [CREW],
  }),
  'operations.yaml': stringify(
    operations.map(({ id, station }) => ({ id, en: id, es: id, station, crew: CREW.id, entry: 'S' })),
  ),
});
