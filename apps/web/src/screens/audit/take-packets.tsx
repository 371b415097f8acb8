import { packedFiles } from '@libs/proof';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { fetchBytes } from '../../api/bytes';
import type { Trouble } from '../../api/client';
import { save } from '../../charts/save';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';

type Props = { readonly homes: readonly string[]; readonly name: string };

/** One home's packet as it comes; several in one file around them. They are made one after the other. */
export const TakePackets = ({ homes, name }: Props): ReactNode => {
  const { t } = useSpeech();
  const [made, setMade] = useState<number | null>(null);
  const [trouble, setTrouble] = useState<Trouble | null>(null);

  const take = async (): Promise<void> => {
    setTrouble(null);
    const packets = new Map<string, Uint8Array>();
    for (const [n, home] of homes.entries()) {
      setMade(n);
      const result = await fetchBytes('packet', { serial: home });
      if (!result.ok) {
        setTrouble(result.trouble);
        setMade(null);
        return;
      }
      packets.set(`${home}.zip`, result.answer);
    }
    const [only] = packets.values();
    const bytes = packets.size === 1 && only !== undefined ? only : packedFiles(packets);
    save(`${name}.zip`, new Blob([new Uint8Array(bytes)], { type: 'application/zip' }));
    setMade(null);
  };

  return (
    <div className="stack tight">
      <div className="row">
        <button type="button" className="button" disabled={made !== null} onClick={() => void take()}>
          {homes.length === 1 ? t('audit.take') : t('audit.take-all', { count: homes.length })}
        </button>
        {made !== null && homes.length > 1 && (
          <label className="row">
            <progress value={made} max={homes.length} />
            <span role="status">{t('audit.taking', { done: made, of: homes.length })}</span>
          </label>
        )}
        {made !== null && homes.length === 1 && <span role="status">{t('audit.making')}</span>}
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} />}
    </div>
  );
};
