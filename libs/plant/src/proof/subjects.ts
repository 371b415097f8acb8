import type { Envelope } from '@libs/kernel';

/** Streams of a home that is being proven: its own whole, and those of what was used on it. */
export const ownStreams = (home: string, sections: readonly string[]): readonly string[] => [
  `home/${home}`,
  ...sections.map((serial) => `section/${serial}`),
];

/** Lots, instruments and people these events speak of: their streams show whether they were fit for it at the time. */
export const streamsUsed = (events: readonly Envelope[]): readonly string[] => {
  const named = events.flatMap(({ actor, data: { lots, instrument } }) => [
    `person/${actor}`,
    ...textsIn(lots).map((lot) => `lot/${lot}`),
    ...textsIn([instrument]).map((one) => `instrument/${one}`),
  ]);
  return [...new Set(['plant/plant', ...named])];
};

const textsIn = (value: unknown): readonly string[] =>
  Array.isArray(value) ? value.filter((one): one is string => typeof one === 'string') : [];

export const RULEBOOK_STREAM = 'rulebook/rulebook';

/** Rulebook revisions these events were judged by. */
export const revisionsOf = (events: readonly Envelope[]): ReadonlySet<number> =>
  new Set(events.flatMap(({ revision }) => (revision === null ? [] : [revision])));

export const isIssueOf = (revisions: ReadonlySet<number>, { schema, data }: Envelope): boolean =>
  schema.startsWith('RevisionIssued/') && revisions.has(Number(data['revision']));

/** The home a stream of units belongs to, and its sections: as its first event has it. */
export const homeIn = (
  events: readonly Envelope[],
): { readonly home: string; readonly sections: readonly string[] } | undefined => {
  for (const { data } of events) {
    const { home, sections } = data;
    if (typeof home === 'string' && Array.isArray(sections)) return { home, sections: textsIn(sections) };
  }
  return undefined;
};
