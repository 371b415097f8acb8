import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useSignedIn } from '../../session/session';
import { capital } from '../../words/named';
import { useSpeech } from '../../words/words';
import type { Card } from './cards';
import { FormFoot } from './form-foot';
import { PanelHead } from './panel-head';
import { useTelling } from './use-telling';
import { useWork } from './work-context';

type PlacesProps = {
  readonly chosen: readonly string[];
  readonly change: (places: readonly string[]) => void;
};

/** None chosen: everywhere. */
const Places = ({ chosen, change }: PlacesProps): ReactNode => {
  const { t, say, locale } = useSpeech();
  const { plant } = useSignedIn();
  const toggle = (place: string): void =>
    change(chosen.includes(place) ? chosen.filter((other) => other !== place) : [...chosen, place]);
  return (
    <fieldset className="stack tight">
      <legend className="field-name">{t('laid-open.where')}</legend>
      <div className="choices">
        {plant.places.map((place) => (
          <button
            key={place.id}
            type="button"
            className="button choice"
            aria-pressed={chosen.includes(place.id)}
            onClick={() => toggle(place.id)}
          >
            {capital(say(place.name), locale)}
          </button>
        ))}
      </div>
    </fieldset>
  );
};

/** Covered work was laid open: where, and for which defect. What it hid is due again. */
export const LaidOpenForm = ({ card }: { readonly card: Card }): ReactNode => {
  const { t, say } = useSpeech();
  const { section, station, close, told } = useWork();
  const telling = useTelling();
  const [places, setPlaces] = useState<readonly string[]>([]);
  const defects = section.defects.filter((one) => one.class === 'nonconformance' && one.state !== 'closed');
  const [defect, setDefect] = useState<string | null>(defects[0]?.defect ?? null);
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const body = {
      serial: section.serial,
      operation: card.operation,
      places: [...places],
      defect,
      station: station.id,
    };
    told(await telling.send('coverOpening', body), t('told.laid-open', { operation: say(card.name) }));
  };
  return (
    <form className="panel-form stack" onSubmit={(event) => void submit(event)}>
      <PanelHead title={t('laid-open.title', { operation: say(card.name) })} close={close} />
      <p>{t('laid-open.says')}</p>
      <Places chosen={places} change={setPlaces} />
      {defects.length > 0 && (
        <div className="choices" role="group" aria-label={t('laid-open.for')}>
          {defects.map((one) => (
            <button
              key={one.defect}
              type="button"
              className="button choice"
              aria-pressed={defect === one.defect}
              onClick={() => setDefect(defect === one.defect ? null : one.defect)}
            >
              {say(one.says)}
            </button>
          ))}
        </div>
      )}
      <FormFoot telling={telling} action={t('laid-open.record')} ready />
    </form>
  );
};
