import type { ReactNode, SyntheticEvent } from 'react';
import { useSignedIn } from '../../session/session';
import { named } from '../../words/named';
import { useSpeech } from '../../words/words';
import { useDraft } from './drafts';
import { FormFoot } from './form-foot';
import { PanelHead } from './panel-head';
import { ScannedField } from './scanned-field';
import { useTelling } from './use-telling';
import { useWork } from './work-context';

/** A lot opened at the station: every section worked here from now on inherits it, until the next one is mounted. */
export const LotForm = (): ReactNode => {
  const { t, say } = useSpeech();
  const { station, close, told } = useWork();
  const { plant } = useSignedIn();
  const telling = useTelling();
  const only = station.lotKinds.length === 1 ? (station.lotKinds[0] ?? '') : '';
  const { draft, change, forget } = useDraft(`${station.id}/lot`, { lot: '', kind: only });
  const { lot, kind } = draft;
  const kindName = (id: string): string => say(named(plant.lotKinds, id));
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const result = await telling.send('mounting', { station: station.id, lot: lot.trim(), kind });
    if (result !== 'turned-down') forget();
    const answer = typeof result === 'string' ? result : { ...result, serial: '', findings: [], holds: [] };
    told(answer, t('told.mounted', { lot: lot.trim(), kind: kindName(kind) }));
  };
  return (
    <form className="panel-form stack" onSubmit={(event) => void submit(event)}>
      <PanelHead title={t('lot.title')} close={close} />
      <p>{t('lot.says')}</p>
      <ScannedField name={t('lot.number')} value={lot} change={(next) => change({ lot: next })} />
      <fieldset className="stack tight">
        <legend className="field-name">{t('lot.kind')}</legend>
        <div className="choices">
          {station.lotKinds.map((id) => (
            <button
              key={id}
              type="button"
              className="button choice"
              aria-pressed={kind === id}
              onClick={() => change({ kind: id })}
            >
              {kindName(id)}
            </button>
          ))}
        </div>
      </fieldset>
      <FormFoot telling={telling} action={t('lot.mount')} ready={lot.trim() !== '' && kind !== ''} />
    </form>
  );
};
