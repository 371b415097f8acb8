import type { ReactNode } from 'react';
import { mayDecide, useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { SectionFacts } from './cards';
import { useTelling } from './use-telling';
import { useWork } from './work-context';

type Hold = SectionFacts['holds'][number];

const HeldRow = ({ hold }: { readonly hold: Hold }): ReactNode => {
  const { t, say } = useSpeech();
  const { me } = useSignedIn();
  const { section, station, told } = useWork();
  const times = useTimes();
  const telling = useTelling();
  const release = async (): Promise<void> =>
    told(
      await telling.send('release', { serial: section.serial, station: station.id }, { hold: hold.hold }),
      t('told.released'),
    );
  return (
    <li className="hold-row">
      <Mark name="held" size={32} />
      <div className="grow stack tight">
        <p>{say(hold.says)}</p>
        <p className="small">{t('hold.since', { since: times.moment(hold.since) })}</p>
        {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
        {mayDecide(me) && (
          <div>
            <button type="button" className="button" disabled={telling.busy} onClick={() => void release()}>
              {t('hold.release')}
            </button>
          </div>
        )}
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
