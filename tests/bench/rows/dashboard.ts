import { openLedger } from '@libs/ledger/typeorm';
import { openPlantAt } from '@libs/plant';
import type { Plant } from '@libs/plant';
import { VIEWS } from '@libs/views';
import { rebuild } from '@libs/views/typeorm';
import { Database } from 'sqlite3';
import type { Contest, Row } from '../bench';
import { SECRET, START, record } from '../recorded-log';
import { scratch } from '../scratch';

const ROUNDS = 60;
const STATION = 'station-7';

/** The last quarter on record, as the screen asks for it. */
const SPAN = { from: null, to: null };

/** The questions behind the quality screen and a station's page, each by itself: the slowest counts. */
const QUESTIONS: readonly ((plant: Plant) => Promise<unknown>)[] = [
  (plant) => plant.asks.yieldByStation(SPAN),
  (plant) => plant.asks.signals(SPAN),
  (plant) => plant.asks.stationChart(STATION, SPAN),
  (plant) => plant.asks.defectCounts('code', { station: null, class: 'nonconformance' }, SPAN),
];

/** 95th percentile, in milliseconds, of the question that takes longest. */
const slowest = async (plant: Plant): Promise<number> => {
  const percentiles: number[] = [];
  for (const ask of QUESTIONS) {
    const times: number[] = [];
    for (let round = 0; round < ROUNDS; round += 1) {
      const began = performance.now();
      await ask(plant);
      times.push(performance.now() - began);
    }
    percentiles.push(times.sort((a, b) => a - b)[Math.floor(ROUNDS * 0.95)] ?? NaN);
  }
  return Math.max(...percentiles);
};

/** First-pass yield of each station over the same days, straight from the events. */
const BY_SQL = `WITH moved AS (
    SELECT json_extract(body, '$.data.serial') AS serial, json_extract(body, '$.data.from') AS station,
      json_extract(body, '$.occurredAt') AS at
    FROM event WHERE json_extract(body, '$.schema') = 'SectionMoved/1' AND json_extract(body, '$.occurredAt') >= ?),
  found AS MATERIALIZED (
    SELECT json_extract(body, '$.data.serial') AS serial, json_extract(body, '$.data.charged') AS station,
      MIN(json_extract(body, '$.occurredAt')) AS at
    FROM event WHERE json_extract(body, '$.schema') = 'DefectRecorded/1' GROUP BY 1, 2)
  SELECT moved.station, COUNT(*) AS sections, SUM(found.at IS NULL OR found.at > moved.at) AS clean
  FROM moved LEFT JOIN found ON found.serial = moved.serial AND found.station = moved.station
  GROUP BY moved.station`;

const bySql = async (database: Database, from: string): Promise<number> => {
  const began = performance.now();
  await new Promise<void>((done, fail) => {
    database.all(BY_SQL, [from], (error: Error | null) => {
      if (error === null) done();
      else fail(error);
    });
  });
  return performance.now() - began;
};

type Kept = { readonly plant: Plant; readonly file: string; readonly clear: () => Promise<void> };

/** A log with its views, and the plant that answers from them. */
const keep = async (size: number): Promise<Kept> => {
  const files = scratch();
  const file = files.file();
  await record(file, size);
  const ledger = await openLedger({
    at: { file },
    name: 'Bench',
    clock: () => START,
    secret: SECRET,
    keepers: [],
  });
  await rebuild(ledger, VIEWS, () => undefined);
  await ledger.close();
  const plant = await openPlantAt({ at: { file }, keys: `${file}-keys`, name: 'Bench', clock: () => START });
  return {
    plant,
    file,
    clear: async () => {
      await plant.close();
      await files.clear();
    },
  };
};

const prepare = async (size: number): Promise<Contest> => {
  const kept = await keep(size);
  const database = new Database(kept.file);
  const { from } = await kept.plant.asks.yieldByStation(SPAN);
  return {
    ours: () => slowest(kept.plant),
    peer: () => bySql(database, from),
    close: async () => {
      await new Promise<void>((done) => {
        database.close(() => {
          done();
        });
      });
      await kept.clear();
    },
  };
};

/** Any quality screen's data over the last quarter, beside one SQL query over the events for the yields alone. */
export const dashboard: Row = {
  name: 'dashboard',
  unit: 'ms',
  better: 'faster',
  peerName: 'the yields by one SQL query over the events',
  goal: 1,
  prepare,
};

/** The same at this size, beside itself at a tenth of it. */
const GROWTH = 10;

const prepareGrowth = async (size: number): Promise<Contest> => {
  const [large, small] = [await keep(size), await keep(Math.round(size / GROWTH))];
  return {
    ours: () => slowest(large.plant),
    peer: () => slowest(small.plant),
    close: async () => {
      await large.clear();
      await small.clear();
    },
  };
};

export const dashboardGrowth: Row = {
  name: 'dashboard-growth',
  unit: 'ms',
  better: 'less',
  peerName: 'the same at a tenth of the events',
  goal: 1.5,
  prepare: prepareGrowth,
};
