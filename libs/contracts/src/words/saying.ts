import type { Words } from '@libs/judge';
import type { EventData } from './event-data';
import type { Names } from './names';

/** How the floor speaks of one type of event. */
export type Saying = (data: EventData, names: Names) => Words;
export type Sayings = { readonly [type: string]: Saying };
