import { accept } from '@libs/kernel';
import type { StreamKind } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import type { Asking } from '@libs/ledger';
import type { UnitEvent } from '@libs/record';
import { metaFor } from './bin';

/** Records whatever it is told: for tests that are about what is made of events, not about how they are decided. */
const toldUnit = (
  name: 'section' | 'home',
): StreamKind<readonly UnitEvent[], null, UnitEvent, never, null> => ({
  name,
  initial: null,
  decide: (events) => accept(...events),
  evolve: () => null,
});

const KINDS = { section: toldUnit('section'), home: toldUnit('home') } as const;

/** `occurredAt` as the device would say it; the ledger itself says when it was recorded. */
export const toldOf = (
  key: string,
  stream: { readonly kind: 'section' | 'home'; readonly serial: string },
  occurredAt: string,
  events: readonly UnitEvent[],
): Asking => ({
  parts: [partOf({ kind: KINDS[stream.kind], id: stream.serial, command: events, facts: () => null })],
  meta: { ...metaFor(key), occurredAt },
  content: JSON.stringify(events),
});
