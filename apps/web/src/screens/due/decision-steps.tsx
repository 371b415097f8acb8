import { useState } from 'react';
import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { TextField } from '../../ui/field';
import { useSpeech } from '../../words/words';
import { SEVERITY_WORDS } from '../claims/claim';
import type { Severity } from '../claims/claim';
import { today } from '../claims/days';
import { TextArea } from '../claims/text-area';
import { ToldForm } from '../claims/told-form';
import type { Method, StepProps } from './file';
import { MethodsField } from './methods-field';

const SEVERITIES: readonly Severity[] = [
  'imminent-safety-hazard',
  'serious-defect',
  'defect',
  'noncompliance',
  'no-action',
];

/** Which of the four it is, or that none is. */
export const InitialStep = ({ file, done }: StepProps): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(done);
  const [severity, setSeverity] = useState<Severity | null>(null);
  const [decidedOn, setDecidedOn] = useState(today);
  const [methods, setMethods] = useState<readonly Method[]>([]);
  const [bases, setBases] = useState('');
  const send = (): void => {
    if (severity === null) return;
    const body = { severity, decidedOn, methods: [...methods], bases: bases.trim() };
    void telling.send('initialDetermination', body, { determination: file.determination });
  };
  return (
    <ToldForm
      telling={telling}
      ready={severity !== null && bases.trim() !== '' && decidedOn !== ''}
      says={t('claims.record')}
      send={send}
    >
      <div className="choices" role="group" aria-label={t('due.step-initial')}>
        {SEVERITIES.map((one) => (
          <button
            key={one}
            type="button"
            className="button"
            aria-pressed={severity === one}
            onClick={() => setSeverity(one)}
          >
            {t(SEVERITY_WORDS[one])}
          </button>
        ))}
      </div>
      <TextField name={t('due.decided-on')} type="date" value={decidedOn} change={setDecidedOn} />
      <MethodsField chosen={methods} change={setMethods} />
      <TextArea name={t('due.bases')} value={bases} change={setBases} />
    </ToldForm>
  );
};

/** Which homes are in the class: those exposed, until somebody takes one off. */
export const ClassStep = ({ file, done }: StepProps): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(done);
  const exposed = file.exposure.map(({ home }) => home);
  const [off, setOff] = useState<readonly string[]>([]);
  const [decidedOn, setDecidedOn] = useState(today);
  const [methods, setMethods] = useState<readonly Method[]>([]);
  const [bases, setBases] = useState('');
  const homes = exposed.filter((home) => !off.includes(home));
  const body = { decidedOn, homes, methods: [...methods], bases: bases.trim() };
  return (
    <ToldForm
      telling={telling}
      ready={bases.trim() !== '' && decidedOn !== ''}
      says={t('due.class-of', { count: homes.length })}
      send={() => void telling.send('classDetermination', body, { determination: file.determination })}
    >
      <p>{t('due.class-says')}</p>
      <fieldset className="field">
        <legend className="field-name">{t('due.in-class')}</legend>
        <div className="row">
          {exposed.map((home) => (
            <label key={home} className="check mono small">
              <input
                type="checkbox"
                checked={!off.includes(home)}
                onChange={(event) =>
                  setOff(event.target.checked ? off.filter((one) => one !== home) : [...off, home])
                }
              />
              {home}
            </label>
          ))}
        </div>
      </fieldset>
      <TextField name={t('due.decided-on')} type="date" value={decidedOn} change={setDecidedOn} />
      <MethodsField chosen={methods} change={setMethods} />
      <TextArea name={t('due.bases')} value={bases} change={setBases} />
    </ToldForm>
  );
};
