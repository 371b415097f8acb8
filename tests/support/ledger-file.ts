import type { Envelope } from '@libs/kernel';
import { readLedger } from '@libs/ledger/typeorm';

/** Every event of a ledger's file, by position. */
export const eventsIn = async (file: string): Promise<readonly Envelope[]> => {
  const ledger = await readLedger({ file });
  try {
    const events: Envelope[] = [];
    for (let page = await ledger.after(0, 5_000); page.length > 0;) {
      events.push(...page);
      page = await ledger.after(events.length, 5_000);
    }
    return events;
  } finally {
    await ledger.close();
  }
};

export const typeOfEvent = ({ schema }: Envelope): string => schema.split('/')[0] ?? schema;

export const countsByType = (events: readonly Envelope[]): { readonly [type: string]: number } => {
  const counts: { [type: string]: number } = {};
  for (const event of events) counts[typeOfEvent(event)] = (counts[typeOfEvent(event)] ?? 0) + 1;
  return counts;
};
