import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { mayDecide, useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { SectionFacts } from './cards';
import { useTelling } from './use-telling';
import { useWork } from './work-context';

type Hold = SectionFacts['holds'][number];

/** A hold goes for a reason, which stands in the history beside it. */
const Release = ({ hold }: { readonly hold: Hold }): ReactNode => {
  const { t, say } = useSpeech();
  const { section, station, told } = useWork();
  const telling = useTelling();
  const [open, setOpen] = useState(false);
  const [why, setWhy] = useState('');
  const release = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const body = { serial: section.serial, station: station.id, note: why.trim() };
    const result = await telling.send('release', body, { hold: hold.hold });
    told(result, t('told.released', { hold: say(hold.says) }), { releases: true });
  };
  if (!open)
    return (
      <div>
        <button type="button" className="button" onClick={() => setOpen(true)}>
          {t('hold.release')}
        </button>
      </div>
    );
  return (
    <form className="stack tight" onSubmit={(event) => void release(event)}>
      <label className="field">
        <span className="field-name">{t('hold.why')}</span>
        <textarea
          className="input"
          rows={2}
          maxLength={2000}
          autoFocus
          value={why}
          onChange={(event) => setWhy(event.target.value)}
        />
      </label>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <div className="choices">
        <button type="submit" className="button primary" disabled={telling.busy || why.trim() === ''}>
          {t('hold.release')}
        </button>
        <button type="button" className="button" onClick={() => setOpen(false)}>
          {t('back')}
        </button>
      </div>
    </form>
  );
};

const HeldRow = ({ hold }: { readonly hold: Hold }): ReactNode => {
  const { t, say } = useSpeech();
  const { me } = useSignedIn();
  const times = useTimes();
  return (
    <li className="hold-row">
      <Mark name="held" size={32} />
      <div className="grow stack tight">
        <p>{say(hold.says)}</p>
        <p className="small">{t('hold.since', { since: times.moment(hold.since) })}</p>
        {mayDecide(me) && <Release hold={hold} />}
      </div>
    </li>
  );
};

export const HoldList = ({ holds }: { readonly holds: readonly Hold[] }): ReactNode => {
  const { t } = useSpeech();
  if (holds.length === 0) return null;
  return (
    <section className="stack tight" aria-labelledby="holds">
      <h2 id="holds">{t('holds', { count: holds.length })}</h2>
      <ul className="stack tight">
        {holds.map((hold) => (
          <HeldRow key={hold.hold} hold={hold} />
        ))}
      </ul>
    </section>
  );
};
