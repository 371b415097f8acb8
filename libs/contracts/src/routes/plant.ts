import { z } from 'zod';
import { KitAnswer } from '../kit';
import * as screens from '../screens';
import { get } from './route';

const STAGES = /^(?:on-line|pulled|ordered|shipped)(?:,(?:on-line|pulled|ordered|shipped))*$/;

/** The plant, its line, its sections and homes. */
export const plantRoutes = {
  plant: get('/api/plant', 'Stations, places, codes: what every screen needs once', screens.PlantAnswer),
  line: get('/api/line', 'Every section on the line', screens.LineAnswer, {
    query: {
      stage: {
        required: false,
        about: 'on-line, pulled, ordered, shipped, several with commas; left out: on-line and pulled',
        schema: z.string().regex(STAGES, 'on-line, pulled, ordered, shipped, with commas between'),
      },
    },
  }),
  section: get(
    '/api/sections/{serial}',
    'A section: what is due, required, and what blocks it',
    screens.SectionAnswer,
    {
      query: {
        at: { required: false, about: 'Station asked about, or `all`; left out: where the section is' },
      },
    },
  ),
  kit: get(
    '/api/stations/{station}/kit',
    'What a tablet at a station needs to work on without a network: sections near it, their state and build plans (ETag, If-None-Match)',
    KitAnswer,
  ),
  homes: get('/api/homes', 'Homes, by part of a serial', screens.HomesAnswer, {
    query: {
      search: { required: false, about: 'Part of a serial, model or label number' },
      most: {
        required: false,
        about: 'How many homes at most; 50 where it is left out',
        schema: z.string().regex(/^[1-9]\d{0,3}$/, 'a number from 1 to 9999'),
      },
    },
  }),
  history: get(
    '/api/homes/{serial}/history',
    "A home's history, in the order it happened",
    screens.HistoryAnswer,
  ),
  stream: get(
    '/api/stream',
    'Live news from the ledger (server-sent events; Last-Event-ID catches up)',
    screens.StreamNews,
    {
      media: 'text/event-stream',
      query: {
        after: {
          required: false,
          about: 'Position after which to begin, where no Last-Event-ID is sent; left out: only what is new',
          schema: z.string().regex(/^\d{1,15}$/, 'a ledger position: digits'),
        },
      },
    },
  ),
} as const;
