import type { ReactNode } from 'react';
import { mayDecide, useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import { FindingList } from '../../ui/finding-list';
import { PanelHead } from './panel-head';
import type { Panel } from './panel';
import { useTelling } from './use-telling';
import { useWork } from './work-context';

type Props = { readonly panel: Extract<Panel, { show: 'told' }> };

const Undo = ({ panel }: Props): ReactNode => {
  const { t } = useSpeech();
  const { section, show, told } = useWork();
  const telling = useTelling();
  const { me } = useSignedIn();
  const { card, undo } = panel;
  const fresh =
    undo === null
      ? []
      : section.defects.filter(
          ({ defect, state }) => state === 'open' && !undo.defectsBefore.includes(defect),
        );
  const withdraw = async (defect: string): Promise<void> =>
    told(
      await telling.send('closing', { serial: section.serial, how: 'withdrawn' }, { defect }),
      t('told.withdrawn'),
    );
  return (
    <div className="choices">
      {mayDecide(me) &&
        fresh.map(({ defect }) => (
          <button
            key={defect}
            type="button"
            className="button"
            disabled={telling.busy}
            onClick={() => void withdraw(defect)}
          >
            {t('undo')}
          </button>
        ))}
      {!mayDecide(me) && fresh.length > 0 && <p className="quiet">{t('undo.ask')}</p>}
      {card !== null && (
        <>
          <button type="button" className="button" onClick={() => show({ show: 'correct', card })}>
            {t('undo.values')}
          </button>
          <button type="button" className="button" onClick={() => show({ show: 'wrong-serial', card })}>
            {t('undo.serial')}
          </button>
        </>
      )}
    </div>
  );
};

/** Recorded; what the record has to say of it in words; and the way to put it right. */
export const ToldPanel = ({ panel }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { close, mayI, asking, section } = useWork();
  const { answer, then } = panel;
  const still = new Set(section.holds.map(({ hold }) => hold));
  const gone = panel.holdsBefore.filter((hold) => !still.has(hold)).length;
  return (
    <section className="stack settle" aria-live="polite">
      <PanelHead title={t('told.title')} close={close} />
      <div className="verdict cleared">
        <Mark name="proven" size={48} />
        <div className="grow">
          <p className="verdict-line">{panel.says}</p>
          {gone > 0 && <p>{t('told.hold-gone', { count: gone })}</p>}
          <details className="source">
            <summary>{t('told.position-where')}</summary>
            <p className="small">{t('told.position', { position: answer.position })}</p>
          </details>
        </div>
      </div>
      {answer.findings.length > 0 && (
        <>
          <h3>{t('told.findings')}</h3>
          <FindingList findings={answer.findings} />
        </>
      )}
      {answer.holds.map((hold) => (
        <p key={hold.hold} className="notice hold">
          <Mark name="held" size={28} /> <span className="grow">{say(hold.says)}</span>
        </p>
      ))}
      {then !== null && (
        <button type="button" className="button primary big" disabled={asking} onClick={() => mayI(then)}>
          {t('told.ask-again', { work: say(then.name) })}
        </button>
      )}
      <button type="button" className={then === null ? 'button primary big' : 'button big'} onClick={close}>
        {t('told.go-on')}
      </button>
      <Undo panel={panel} />
    </section>
  );
};
