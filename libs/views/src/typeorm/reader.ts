import type { Sql } from '@libs/ledger';
import type { ViewReader } from '../reader';
import { cards, homesLike } from './read-cards';
import { defects, defectTallies } from './read-defects';
import { lastDay, passages, yieldByDay, yieldByStation } from './read-yields';

/** `sql` may be read-only. */
export const viewReader = (sql: Sql): ViewReader => ({
  cards: (stages) => cards(sql, stages),
  homesLike: (search, limit) => homesLike(sql, search, limit),
  yieldByStation: (days) => yieldByStation(sql, days),
  yieldByDay: (station, days) => yieldByDay(sql, station, days),
  passages: (station, which, days, limit) => passages(sql, { station, which, days, limit }),
  defectTallies: (by, only, days) => defectTallies(sql, { by, ...only, days }),
  defects: (only, days, limit) => defects(sql, only, days, limit),
  lastDay: () => lastDay(sql),
});
