import { passages } from './passages/passages.view';
import { sectionCard } from './section-card/section-card.view';
import { anyView } from './view';
import type { AnyView } from './view';

/** Every view this plant keeps. */
export const VIEWS: readonly AnyView[] = [anyView(sectionCard), anyView(passages)];
