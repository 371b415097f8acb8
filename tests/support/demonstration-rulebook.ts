import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { CompiledPlan, Design } from '@libs/judge';
import type { Rulebook, RulebookFiles } from '@libs/rulebook';
import { readRulebook, resolvePlan } from '@libs/rulebook';
import { demonstrationFiles } from '../../seeds/src/demonstration-files';

/** The rulebook files as they lie in seeds/. */
export const demonstrationRulebookFiles = (): RulebookFiles =>
  demonstrationFiles(join(__dirname, '..', '..'));

/** Read once a test file: it is whole or the test stops here, with every complaint. */
export const demonstrationRulebook = (): Rulebook => {
  const read = readRulebook(demonstrationRulebookFiles());
  if (!read.ok) throw new Error(read.problems.map((one) => `${one.file}:${one.row} ${one.says}`).join('\n'));
  return read.rulebook;
};

/** The wet half of a gas double in wind zone I: what the tests vary. */
export const WET_HALF: Design = {
  sections: '2',
  role: 'wet',
  stud: '2x6',
  wind: 'I',
  roof_load: 'South',
  thermal: '2',
  fuel: 'natural',
  gas_tubing: 'steel',
  duct: 'floor',
  uplift: 'straps',
  sheathing: 'yes',
  sheathing_path: 'exempt',
  roofing: 'shingle',
  attic_vent: 'natural',
  wall_retarder: 'inside-low',
  pan: 'site-built',
  dwv_test: 'water',
  dielectric: 'A',
  gasket: 'plant',
  mated_in_plant: 'no',
  hinged_roof: 'no',
  site_completion: 'no',
  wall_board: 'on-line',
  axles: '4',
  braked_axles: '2',
  joists: '2x8 at 16 in',
  floor_r: 'R-22',
  truss: 'T-114',
  attic_r: 'R-33',
  roof_strap_nails: '>= 7',
  shingle_nails: '>= 6',
  sheathing_schedule: 'S-2',
  alarms: '4',
  floor_lags: 'L-2',
};

const sha256Hex = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

export const planOf = (rulebook: Rulebook, change: Design = {}): CompiledPlan =>
  planned(rulebook, { ...WET_HALF, ...change });

/** The plan of the home at its site: no section's own facts in its design. */
export const homePlanOf = (rulebook: Rulebook, change: Design = {}): CompiledPlan => {
  const { role: _, ...design } = WET_HALF;
  return planned(rulebook, { ...design, ...change });
};

const PLANS = new Map<string, CompiledPlan>();

/** Each design is resolved once: a table of figures asks for the same few again and again. */
const planned = (rulebook: Rulebook, design: Design): CompiledPlan => {
  const known = PLANS.get(JSON.stringify(design));
  if (known !== undefined) return known;

  const resolved = resolvePlan(rulebook, 1, design, sha256Hex);
  if (!resolved.ok)
    throw new Error(resolved.problems.map((one) => `${one.column ?? ''} ${one.says}`).join('\n'));
  PLANS.set(JSON.stringify(design), resolved.plan);
  return resolved.plan;
};
