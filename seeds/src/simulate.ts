import type { Plant, Sender } from '@libs/plant';
import type { RulebookFiles } from '@libs/rulebook';
import type { Flow } from './flow';
import { runAgency } from './agency-visits';
import { runLots } from './lot-run';
import type { Card } from './measured';
import { demoInstruments } from './instruments';
import { demoPeople, signIns } from './people';
import type { DemoPerson } from './people';
import { chanceFrom } from './random';
import type { Chance } from './random';
import { runSchedule } from './schedule';
import type { Reach } from './schedule';
import { settingOf, threadsOf } from './setting';
import type { Setting } from './setting';
import { faultsByOperation } from './story';
import { send } from './telling';

export type Simulation = {
  readonly plant: Plant;
  readonly files: RulebookFiles;
  readonly seed: string;
  readonly homes: number;
  /** The story's last day, `2026-11-25`. It stops in that morning, or in the working morning before. */
  readonly lastDay: string;
  /** The ledger's clock is the story's: whoever opened the plant for it hands over how to set it. */
  readonly setClock: (atMs: number) => void;
  readonly progress: (done: Progress) => void;
};

export type Progress = { readonly day: string; readonly share: number; readonly told: number };

export type Simulated = {
  readonly told: number;
  /** Tellings the plant rejected, by code. The story means none. */
  readonly rejected: ReadonlyMap<string, number>;
  /** Whom a visitor may sign in as. */
  readonly signIns: readonly DemoPerson[];
  readonly sections: number;
  readonly days: number;
};

/** The office machine that opens the demonstration. */
const OPENER = 'p-100';

/** Tells a year of the demonstration plant. The same seed, homes and last day give the same ledger, byte for byte. */
export const simulate = async (simulation: Simulation): Promise<Simulated> => {
  const chance = chanceFrom(`studbook demonstration ${simulation.seed}`);
  const setting = settingOf(simulation.files, simulation, chance);
  const sender = sendersFrom(chance.branch('keys'));

  simulation.setClock(setting.world.startMs);
  await openPlant(simulation, setting, sender);
  const { faults, stations } = await simulation.plant.asks.plant();
  for (const [operation, known] of faultsByOperation(faults)) setting.faults.set(operation, known);

  const lots = stations.flatMap(({ id, lotKinds }) =>
    lotKinds.map((kind) => runLots(setting.world, id, kind, chance.branch(`lot ${id} ${kind}`))),
  );
  const agency = runAgency(setting.world, chance.branch('agency'));
  const threads = [agency, ...lots, ...threadsOf(setting, chance)];
  const told = await tellAll(simulation, setting, sender, threads);
  return {
    ...told,
    signIns: signIns(demoPeople()),
    sections: setting.sections,
    days: setting.world.days.length,
  };
};

type MakeSender = (actor: string, atMs: number) => Sender;

/** Idempotency keys as a device makes them (UUIDv7), their chance drawn from the seed. */
const sendersFrom =
  (chance: Chance): MakeSender =>
  (actor, atMs) => ({ key: uuidV7(atMs, chance), actor, assurance: 'pin' });

const uuidV7 = (atMs: number, chance: Chance): string => {
  const time = Math.floor(atMs).toString(16).padStart(12, '0');
  const variant = '89ab'[chance.between(0, 3)] ?? '8';
  return `${time.slice(0, 8)}-${time.slice(8)}-7${chance.hex(3)}-${variant}${chance.hex(3)}-${chance.hex(12)}`;
};

const openPlant = async (simulation: Simulation, setting: Setting, sender: MakeSender): Promise<void> => {
  const { plant, files } = simulation;
  const { clock, startMs } = setting.world;
  await plant.open(setting.name, setting.zone, true, sender(OPENER, startMs));

  const issued = await plant.issueRevision(files, clock.instant(startMs), sender(OPENER, startMs));
  if (!issued.ok) throw new Error(`The demonstration rulebook: ${JSON.stringify(issued.problems)}`);
  for (const { pin: _pin, ...person } of demoPeople()) await plant.enroll(person, sender(OPENER, startMs));
  for (const instrument of demoInstruments(files, simulation.lastDay)) {
    await plant.calibrate(instrument, sender(OPENER, startMs));
    setting.instruments.set(instrument.kind, instrument.instrument);
  }
};

const tellAll = async (
  simulation: Simulation,
  setting: Setting,
  sender: MakeSender,
  flows: readonly Flow[],
): Promise<Tally> => {
  const { startMs, endMs, clock } = setting.world;
  const tally: Tally = { told: 0, rejected: new Map() };
  await runSchedule(flows, endMs, reachOf(simulation, startMs, sender, tally), (atMs) => {
    const share = (atMs - startMs) / (endMs - startMs);
    simulation.progress({ day: clock.day(atMs), share, told: tally.told });
  });
  return tally;
};

type Tally = { told: number; readonly rejected: Map<string, number> };

const reachOf = (
  { plant, setClock }: Simulation,
  startMs: number,
  sender: MakeSender,
  tally: Tally,
): Reach => {
  const cards = new Map<string, readonly Card[]>();
  const known = new Set<string>();
  let nowMs = startMs;

  return {
    to: (atMs) => {
      nowMs = Math.max(nowMs, atMs);
      setClock(nowMs);
    },
    send: async (one) => {
      const said = await send(plant, one, sender(one.actor, one.atMs));
      tally.told += 1;
      if (!said.ok) count(tally.rejected, `${one.name} ${said.code}`);
      return said;
    },
    isNewToThePlant: ({ name, body }) => {
      const { serial } = body;
      if (typeof serial !== 'string') return name === 'home';
      const isNew = !known.has(serial);
      known.add(serial);
      return isNew;
    },
    look: async (serial, key) => {
      const looked = cards.get(key) ?? (await plant.asks.section(serial, 'all'))?.operations ?? [];
      cards.set(key, looked);
      return looked;
    },
  };
};

const count = (counts: Map<string, number>, name: string): void => {
  counts.set(name, (counts.get(name) ?? 0) + 1);
};
