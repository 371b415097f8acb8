import type { Design, Finding } from '@libs/judge';
import type { Domain } from './body';
import type { Rulebook } from './rulebook';

const ANYWHERE_ELSE = '*';

/**
 * What speaks against a home of this design standing in that county: each zone the county lies in that asks for more
 * than the design was made for. Nothing is said of a county the rulebook does not know.
 */
export const judgeDestination = (
  { body: { counties, domains } }: Rulebook,
  design: Design,
  destination: string | null,
): readonly Finding[] => {
  const county =
    destination === null ? undefined : (counties.get(destination) ?? counties.get(ANYWHERE_ELSE));
  if (destination === null || county === undefined) return [];

  return Object.entries(county.zones).flatMap(([attribute, asked]): readonly Finding[] => {
    const given = design[attribute];
    return given === undefined || isGoodFor(domains.get(attribute), given, asked)
      ? []
      : [
          {
            rule: 'destination-outside-zones',
            grade: 'hold',
            class: 'record',
            operation: '',
            station: null,
            characteristic: attribute,
            required: asked,
            recorded: given,
            places: [destination],
            source: { kind: 'design', reference: 'counties.csv', row: `counties.csv:${county.row}` },
          },
        ];
  });
};

const isGoodFor = (domain: Domain | undefined, given: string, asked: string): boolean =>
  domain === undefined || domain.values.indexOf(given) >= domain.values.indexOf(asked);
