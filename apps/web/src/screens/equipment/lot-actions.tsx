import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { useSignedIn } from '../../session/session';
import { ChoiceField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';

type Row = AnswerOf<'equipment'>['lots'][number];
type Props = { readonly row: Row; readonly again: () => void };

const MAY_QUARANTINE = ['quality-manager', 'inspector', 'administrator'];
const MAY_RELEASE = ['quality-manager', 'administrator'];

/** Into quarantine with a reason, out of it by who manages quality: the sections it is in follow by themselves. */
export const LotActions = ({ row, again }: Props): ReactNode => {
  const { me } = useSignedIn();
  const has = (wanted: readonly string[]): boolean => me.roles.some((role) => wanted.includes(role));
  if (row.standing === 'bad') return has(MAY_RELEASE) ? <Release row={row} again={again} /> : null;
  return has(MAY_QUARANTINE) ? <Quarantine row={row} again={again} /> : null;
};

const Held = ({ sections }: { readonly sections: readonly string[] | null }): ReactNode => {
  const { t } = useSpeech();
  return sections === null ? null : (
    <p role="status">{t('equipment.sections', { count: sections.length })}</p>
  );
};

const Release = ({ row, again }: Props): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(again);
  return (
    <>
      <button
        type="button"
        className="button no-print"
        disabled={telling.busy}
        onClick={() => void telling.send('lotRelease', {}, { lot: row.lot })}
      >
        {t('equipment.release')}
      </button>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
    </>
  );
};

const Quarantine = ({ row, again }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const telling = useTell(again);
  const [open, setOpen] = useState(false);
  const [reason, setReason] = useState('');
  const [sections, setSections] = useState<readonly string[] | null>(null);
  const reasons = (plant.reasons ?? []).filter((one) => one.for.includes('hold'));
  const send = async (): Promise<void> => {
    const answer = await telling.send('quarantine', { reason }, { lot: row.lot });
    if (answer !== undefined) setSections(answer.sections);
  };
  if (!open)
    return (
      <button type="button" className="button no-print" onClick={() => setOpen(true)}>
        {t('equipment.quarantine')}
      </button>
    );
  return (
    <div className="stack tight no-print">
      <ChoiceField
        name={t('equipment.reason')}
        value={reason}
        change={setReason}
        none={t('choose')}
        from={reasons.map(({ id, name }) => ({ id, says: say(name) }))}
      />
      <button
        type="button"
        className="button primary"
        disabled={telling.busy || reason === ''}
        onClick={() => void send()}
      >
        {t('equipment.quarantine-it')}
      </button>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <Held sections={sections} />
    </div>
  );
};
