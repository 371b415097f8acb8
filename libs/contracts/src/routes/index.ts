import type { z } from 'zod';
import { accessRoutes } from './access';
import { auditRoutes } from './audit';
import { claimFilesRoutes } from './claim-files';
import { claimsRoutes } from './claims';
import { defectsRoutes } from './defects';
import { equipmentRoutes } from './equipment';
import { factorRoutes } from './factors';
import { feedRoutes } from './feed';
import { flowRoutes } from './flow';
import { inspectionRoutes } from './inspection';
import { linkRoutes } from './links';
import { photoRoutes } from './photos';
import { plantRoutes } from './plant';
import { qualityRoutes } from './quality';
import { releaseRoutes } from './release';
import { rulebookRoutes } from './rulebook';
import { workRoutes } from './work';
import type { Route } from './route';

export type { Access, Parameter, Route } from './route';

/** Every route there is: the server answers by this table, the OpenAPI document and the web client come from it. */
export const ROUTES = {
  ...accessRoutes,
  ...factorRoutes,
  ...auditRoutes,
  ...feedRoutes,
  ...photoRoutes,
  ...plantRoutes,
  ...qualityRoutes,
  ...workRoutes,
  ...claimsRoutes,
  ...claimFilesRoutes,
  ...defectsRoutes,
  ...equipmentRoutes,
  ...flowRoutes,
  ...inspectionRoutes,
  ...linkRoutes,
  ...releaseRoutes,
  ...rulebookRoutes,
} as const satisfies Record<string, Route>;

export type RouteName = keyof typeof ROUTES;
/** What a route answers, and what it is told, as TypeScript sees them. */
export type AnswerOf<N extends RouteName> = z.output<(typeof ROUTES)[N]['answer']>;
export type TellingName = {
  [N in RouteName]: (typeof ROUTES)[N] extends { readonly body: z.ZodType } ? N : never;
}[RouteName];
/** Told to others than the floor's record: who may come in, what is drawn for an audit, files, the rulebook. */
const BESIDE_THE_RECORD = {
  ...accessRoutes,
  ...factorRoutes,
  ...auditRoutes,
  ...rulebookRoutes,
  ...feedRoutes,
  ...linkRoutes,
  ...claimFilesRoutes,
} as const;
/** What the floor tells. */
export type PlantTelling = Exclude<TellingName, keyof typeof BESIDE_THE_RECORD>;
export const PLANT_TELLINGS: ReadonlySet<string> = new Set(
  Object.entries(ROUTES)
    .filter(([name, route]) => 'body' in route && !(name in BESIDE_THE_RECORD))
    .map(([name]) => name),
);
export type BodyOf<N extends TellingName> = z.output<(typeof ROUTES)[N]['body']>;
/** Before defaults are filled in: what a client may send. */
export type SentBodyOf<N extends TellingName> = z.input<(typeof ROUTES)[N]['body']>;
