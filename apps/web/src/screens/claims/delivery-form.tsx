import { useState } from 'react';
import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { useSpeech } from '../../words/words';
import type { Claim } from './claim';
import { NO_DELIVERY, deliveryOf } from './complaint';
import type { Delivery } from './complaint';
import { DeliveryFields } from './delivery-fields';
import { ToldForm } from './told-form';

type Props = { readonly claim: Claim; readonly claims: readonly Claim[]; readonly done: () => void };

const WRITTEN = ['occupiedOn', 'setOn', 'retailer', 'hauler', 'installer'] as const;

const known = ({ delivery }: Claim): Delivery => ({
  ...NO_DELIVERY,
  ...Object.fromEntries(WRITTEN.map((part) => [part, delivery?.[part] ?? ''])),
});

/** An address that is on record stays there until another is written. */
export const DeliveryForm = ({ claim, claims, done }: Props): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(done);
  const [delivery, setDelivery] = useState(() => known(claim));
  const { home } = claim;
  return (
    <ToldForm
      telling={telling}
      ready={home !== null}
      says={t('claims.record')}
      send={() => home !== null && void telling.send('delivery', { home, ...deliveryOf(delivery) })}
    >
      <DeliveryFields
        delivery={delivery}
        claims={claims}
        change={(part) => setDelivery((before) => ({ ...before, ...part }))}
      />
    </ToldForm>
  );
};
