import { drawingSVG, qrcode } from 'bwip-js/generic';
import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { SecretField } from '../../ui/secret-field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { isShown } from './proving';
import type { Part } from './proving';

/** QR Code (ISO/IEC 18004), drawn here: the secret goes to no picture service. */
const pictureOf = (text: string): string =>
  `data:image/svg+xml;utf8,${encodeURIComponent(qrcode({ bcid: 'qrcode', text }, drawingSVG()))}`;

type Begun = { readonly secret: string; readonly address: string };

const FirstCode = ({
  begun,
  confirmed,
}: {
  readonly begun: Begun;
  readonly confirmed: (recovery: readonly string[]) => void;
}): ReactNode => {
  const { t } = useSpeech();
  const [code, setCode] = useState('');
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const confirm = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const result = await ask('codesConfirm', {}, { body: { code } });
    setTrouble(result.ok ? null : result.trouble);
    if (result.ok) confirmed(result.answer.recovery);
  };
  return (
    <form className="stack" onSubmit={(event) => void confirm(event)}>
      <p>
        {t('own.codes-scan')} <code className="token">{begun.secret}</code>
      </p>
      <img className="own-picture" src={pictureOf(begun.address)} alt={t('own.codes-picture')} />
      <SecretField name={t('own.codes-first')} value={code} change={setCode} once />
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      <div>
        <button type="submit" className="button primary" disabled={code.trim().length < 6}>
          {t('own.codes-confirm')}
        </button>
      </div>
    </form>
  );
};

const Recovery = ({ codes }: { readonly codes: readonly string[] }): ReactNode => {
  const { t } = useSpeech();
  return (
    <div className="stack" role="status">
      <p>{t('own.codes-recovery')}</p>
      <ul className="own-recovery mono">
        {codes.map((code) => (
          <li key={code}>{code}</li>
        ))}
      </ul>
    </div>
  );
};

export const Codes = ({ own, proving, changed }: Part): ReactNode => {
  const { t } = useSpeech();
  const [begun, setBegun] = useState<Begun | null>(null);
  const [recovery, setRecovery] = useState<readonly string[] | null>(null);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const begin = async (): Promise<void> => {
    const result = await ask('codes', {}, { body: proving });
    setTrouble(result.ok ? null : result.trouble);
    if (result.ok) setBegun(result.answer);
  };
  const end = async (): Promise<void> => {
    const result = await ask('codesEnd', {}, { body: proving });
    setTrouble(result.ok ? null : result.trouble);
    if (!result.ok) return;
    setRecovery(null);
    changed();
  };
  return (
    <section className="stack" aria-labelledby="codes">
      <h2 id="codes">{t('own.codes')}</h2>
      <p>{own.codes ? t('own.codes-on', { left: own.recoveryLeft }) : t('own.codes-off')}</p>
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      {recovery !== null && <Recovery codes={recovery} />}
      {begun === null ? (
        <div>
          <button
            type="button"
            className="button"
            disabled={!isShown(proving)}
            onClick={() => void (own.codes ? end() : begin())}
          >
            {t(own.codes ? 'own.codes-end' : 'own.codes-begin')}
          </button>
        </div>
      ) : (
        <FirstCode
          begun={begun}
          confirmed={(codes) => {
            setBegun(null);
            setRecovery(codes);
            changed();
          }}
        />
      )}
    </section>
  );
};
