import { tell } from './flow';
import type { Flow } from './flow';
import type { Chance } from './random';
import { telling } from './telling';
import { yearGone } from './world';
import type { World } from './world';

type Property = { readonly characteristic: string; readonly value: string; readonly unit: string | null };

/** What a lot's certificate says, where the rulebook asks a lot for it. Invented figures. */
const CERTIFICATES: { readonly [kind: string]: readonly Property[] } = {
  strap: [
    { characteristic: 'strap-gauge', value: '26', unit: '1' },
    { characteristic: 'strap-width', value: '1.5', unit: '[in_i]' },
    { characteristic: 'strap-base-metal', value: '0.0179', unit: '[in_i]' },
  ],
  'protector-plate': [
    { characteristic: 'plate-kind', value: '1/16 in or thicker', unit: null },
    { characteristic: 'plate-thickness', value: '0.0625', unit: '[in_i]' },
  ],
  'bottom-board': [{ characteristic: 'puncture-resistance', value: '56', unit: '[in_i].[lbf_av]' }],
  'ceiling-board': [{ characteristic: 'retarder', value: '0.7', unit: '[perm_us]' }],
  batt: [{ characteristic: 'retarder', value: '0.8', unit: '[perm_us]' }],
  'roof-panel': [{ characteristic: 'panel-thickness', value: '0.4375', unit: '[in_i]' }],
  'gas-tubing': [{ characteristic: 'strike-barrier', value: '0.06', unit: '[in_i]' }],
};

/** Working days a lot lasts at a station of this pace; what is not named lasts one to three weeks. */
const LIVES: { readonly [kind: string]: readonly [number, number] } = {
  'cable-14': [2, 4],
  'cable-12': [2, 4],
  strap: [5, 8],
  shingle: [2, 3],
  'deck-adhesive': [3, 5],
  'foam-adhesive': [3, 5],
  receptacle: [4, 6],
  window: [2, 3],
};
const OTHERWISE: readonly [number, number] = [6, 15];
/** Invented makers: none of them exists. */
const MAKERS = ['Bramwell Supply', 'Ostrander Mills', 'Tarn & Pike', 'Hollis Yard', 'Verity Works'] as const;

const lotNumber = (kind: string, count: number, chance: Chance): string =>
  `${kind.slice(0, 3).toUpperCase()}-${chance.hex(6).toUpperCase()}-${String(count).padStart(3, '0')}`;

/** Lots of one kind at one station through the year: received, opened, used up, and the next. */
export function* runLots(world: World, station: string, kind: string, chance: Chance): Flow {
  const [shortest, longest] = LIVES[kind] ?? OTHERWISE;
  let day = 0;
  for (let count = 1; day < world.days.length; count += 1) {
    const today = world.days[day] ?? '';
    const atMs = world.clock.at(today, count === 1 ? 356 : 375 + chance.between(0, 300));
    if (atMs > world.endMs) return;
    const lot = lotNumber(`${station}-${kind}`.replaceAll('-', ''), count, chance);
    const bad = world.story.badLot(kind, yearGone(world, atMs));
    yield* openLot(world, { station, kind, lot, atMs }, chance);
    if (bad) world.badLots.add(lot);
    world.mounted.set(`${station} ${kind}`, lot);
    day += bad ? longest : chance.between(shortest, longest);
  }
}

type Opening = {
  readonly station: string;
  readonly kind: string;
  readonly lot: string;
  readonly atMs: number;
};

function* openLot(world: World, { station, kind, lot, atMs }: Opening, chance: Chance): Flow {
  const when = { occurredAt: world.clock.instant(atMs), device: `tablet-${station}` };
  const sent = { actor: chance.pick(world.staff.crew('dispatch')), atMs };
  yield* tell(
    telling(
      'lot',
      { lot, kind, maker: chance.pick(MAKERS), properties: [...(CERTIFICATES[kind] ?? [])], ...when },
      sent,
    ),
    telling('mounting', { station, lot, kind, ...when }, sent),
  );
}
