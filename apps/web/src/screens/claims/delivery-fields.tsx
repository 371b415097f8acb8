import { useId } from 'react';
import type { ReactNode } from 'react';
import { TextField } from '../../ui/field';
import { useSpeech } from '../../words/words';
import type { Claim } from './claim';
import type { Delivery } from './complaint';
import { TextArea } from './text-area';

type Props = {
  readonly delivery: Delivery;
  /** Whose names are known already. */
  readonly claims: readonly Claim[];
  readonly change: (part: Partial<Delivery>) => void;
};
type Party = 'retailer' | 'hauler' | 'installer';
const PARTIES: readonly Party[] = ['retailer', 'hauler', 'installer'];
const WORDS = {
  retailer: 'complaint.retailer',
  hauler: 'complaint.hauler',
  installer: 'complaint.installer',
} as const;

/** Who hauled, set and sold it, and since when somebody lives there. Spelt as before, so that they count together. */
export const DeliveryFields = ({ delivery, claims, change }: Props): ReactNode => {
  const { t } = useSpeech();
  const id = useId();
  const known = (party: Party): readonly string[] => [
    ...new Set(claims.flatMap((claim) => claim.delivery?.[party] ?? [])),
  ];
  return (
    <div className="stack">
      <div className="claim-fields">
        {PARTIES.map((party) => (
          <label key={party} className="field">
            <span className="field-name">{t(WORDS[party])}</span>
            <input
              className="input"
              list={`${id}-${party}`}
              value={delivery[party]}
              autoComplete="off"
              onChange={(event) => change({ [party]: event.target.value })}
            />
            <datalist id={`${id}-${party}`}>
              {known(party).map((name) => (
                <option key={name} value={name} />
              ))}
            </datalist>
          </label>
        ))}
        <TextField
          name={t('complaint.set')}
          type="date"
          value={delivery.setOn}
          change={(setOn) => change({ setOn })}
        />
        <TextField
          name={t('complaint.occupied')}
          type="date"
          value={delivery.occupiedOn}
          change={(occupiedOn) => change({ occupiedOn })}
        />
      </div>
      <TextArea
        name={t('complaint.address')}
        value={delivery.address}
        change={(address) => change({ address })}
      />
      <p className="quiet small">{t('complaint.address-says')}</p>
    </div>
  );
};
