import { z } from 'zod';
import { LineAnswer, SectionAnswer } from './screens';

const ByName = z.record(z.string(), z.unknown());

/** What the judge takes: its shape belongs to the judge, and a tablet hands it on as it came. */
export const KitSection = z.object({
  section: SectionAnswer.describe(
    'As at this station; operations are left out, a tablet makes them of the plan',
  ),
  state: ByName.describe('What is on record of its work, its open defects and holds'),
  plan: z.string().nullable().describe('Which of the plans it is judged by; null: none fits'),
});

export const KitAnswer = z.object({
  station: z.string(),
  position: z.number().int().describe('Ledger position this is current to'),
  line: LineAnswer,
  sections: z.array(KitSection),
  plans: z.record(z.string(), ByName).describe('Compiled build plans, by their digest'),
  mounted: z
    .record(z.string(), z.array(ByName))
    .describe('Lots in use at each station, as a decision sees them'),
  instruments: z.array(ByName).describe('As a decision sees them'),
  people: z.record(z.string(), z.string()).describe('Names of those who signed'),
});
