import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { RulebookFiles } from '@libs/rulebook';
import { parse } from 'yaml';
import { z } from 'zod';
import { floorClock } from './floor-clock';

const FOLDER = join('seeds', 'rulebook');

/** The demonstration rulebook as it lies in the project folder. */
export const demonstrationFiles = (projectFolder: string): RulebookFiles => {
  const folder = join(projectFolder, FOLDER);
  const names = readdirSync(folder).filter((name) => /\.(?:yaml|csv)$/.test(name));
  return Object.fromEntries(names.sort().map((name) => [name, readFileSync(join(folder, name), 'utf8')]));
};

const Plan = z.object({
  name: z.string(),
  zone: z.string(),
  stations: z.array(z.object({ id: z.string(), pos: z.number().nullable(), kind: z.string() })),
});

export type DemonstrationLine = {
  readonly name: string;
  readonly zone: string;
  /** Line stations in order. */
  readonly line: readonly string[];
};

/** What the story must know of the plant before the plant is open: its zone, and how long its line is. */
export const lineOf = (files: RulebookFiles): DemonstrationLine => {
  const { name, zone, stations } = Plan.parse(parse(files['plant.yaml'] ?? ''));
  const line = stations
    .filter(({ kind }) => kind === 'line')
    .sort((one, other) => (one.pos ?? 0) - (other.pos ?? 0))
    .map(({ id }) => id);
  return { name, zone, line };
};

/** The story stops in a morning's middle. Before that hour, its last day is the day before. */
const STORY_STOPS = 680;
const DAY_MS = 86_400_000;

/** The day on which a story told now may end, so that nothing in it lies in the future. */
export const lastDayFor = (files: RulebookFiles, nowMs: number): string => {
  const clock = floorClock(lineOf(files).zone);
  const today = clock.day(nowMs);
  return nowMs >= clock.at(today, STORY_STOPS) ? today : clock.day(nowMs - DAY_MS);
};
