import { ROUTES } from '@libs/contracts';
import type { Plant, Sender } from '@libs/plant';

type Property = { readonly characteristic: string; readonly value: string; readonly unit?: string };

/** What the demonstration's rulebook asks of a lot instead of a crew, with figures that meet it. Invented. */
const CERTIFICATES: { readonly [kind: string]: readonly Property[] } = {
  strap: [
    { characteristic: 'strap-gauge', value: '26', unit: '1' },
    { characteristic: 'strap-width', value: '1.5', unit: '[in_i]' },
    { characteristic: 'strap-base-metal', value: '0.0179', unit: '[in_i]' },
  ],
  'protector-plate': [
    { characteristic: 'plate-kind', value: '1/16 in or thicker' },
    { characteristic: 'plate-thickness', value: '0.0625', unit: '[in_i]' },
  ],
  'bottom-board': [{ characteristic: 'puncture-resistance', value: '56', unit: '[in_i].[lbf_av]' }],
  'ceiling-board': [{ characteristic: 'retarder', value: '0.7', unit: '[perm_us]' }],
  batt: [{ characteristic: 'retarder', value: '0.8', unit: '[perm_us]' }],
  'roof-panel': [{ characteristic: 'panel-thickness', value: '0.4375', unit: '[in_i]' }],
};

/** A good lot of every kind at every station that mounts it. */
export const mountLots = async (plant: Plant): Promise<void> => {
  const { stations } = await plant.asks.plant();
  for (const { station, kind } of stations.flatMap(({ id, lotKinds }) =>
    lotKinds.map((kind) => ({ station: id, kind })),
  )) {
    const lot = `L-${station}-${kind}`;
    const sender = (what: string): Sender => ({ key: `${what}-${lot}`, actor: 'manager', assurance: 'pin' });
    const received = await plant.tell.lot(
      ROUTES.lot.body.parse({ lot, kind, properties: CERTIFICATES[kind] ?? [] }),
      sender('receive'),
      {},
    );
    const mounted = await plant.tell.mounting(
      ROUTES.mounting.body.parse({ station, lot, kind }),
      sender('mount'),
      {},
    );
    if (!received.ok || !mounted.ok) throw new Error(`${lot} was not mounted`);
  }
};
