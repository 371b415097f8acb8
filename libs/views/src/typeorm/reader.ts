import type { Sql } from '@libs/ledger';
import type { ViewReader } from '../reader';
import { cards, cardsOfHome, heldCards, homesLike, homesLikeCount, labelledBetween } from './read-cards';
import { agencyDefects, defects, defectTallies, openDefects } from './read-defects';
import { found, runs, yieldByStationDay } from './read-runs';
import { models, passages, yieldOf } from './read-passages';
import { lastDay, yieldByDay, yieldByStation } from './read-yields';

/** `sql` may be read-only. */
export const viewReader = (sql: Sql): ViewReader => ({
  cards: (stages) => cards(sql, stages),
  homesLike: (search, limit) => homesLike(sql, search, limit),
  homesLikeCount: (search) => homesLikeCount(sql, search),
  heldCards: () => heldCards(sql),
  cardsOfHome: (home) => cardsOfHome(sql, home),
  labelledBetween: (days) => labelledBetween(sql, days),
  openDefects: (ofClass, limit) => openDefects(sql, ofClass, limit),
  agencyDefects: (days) => agencyDefects(sql, days),
  yieldByStation: (days) => yieldByStation(sql, days),
  yieldByDay: (station, days) => yieldByDay(sql, station, days),
  yieldByStationDay: (days) => yieldByStationDay(sql, days),
  runs: (station, days) => runs(sql, station, days),
  found: (station, days) => found(sql, station, days),
  yieldOf: (days, filter) => yieldOf(sql, days, filter),
  models: (station, days) => models(sql, station, days),
  passages: (asked, days, limit) => passages(sql, { ...asked, days, limit }),
  defectTallies: (by, only, days) => defectTallies(sql, { by, ...only, days }),
  defects: (only, days, limit) => defects(sql, only, days, limit),
  lastDay: () => lastDay(sql),
});
