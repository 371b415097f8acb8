import type { ReactNode } from 'react';
import { useUnsent } from '../../api/outbox';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import { FindingList } from '../../ui/finding-list';
import { JudgedHere } from './judged-here';
import { PanelHead } from './panel-head';
import { useWork } from './work-context';

/** Nobody answered. Says plainly what became of the entry; sending again stands at the top of every screen. */
export const UnsentPanel = (): ReactNode => {
  const { t } = useSpeech();
  const { close, section } = useWork();
  const unsent = useUnsent().filter(({ state }) => state !== 'new');
  const sent = unsent.length === 0;
  const here = unsent.filter(({ body }) => body.serial === section.serial).at(-1)?.here ?? null;
  return (
    <section className="stack">
      <PanelHead title={t(sent ? 'kept.sent' : 'kept.title')} close={close} />
      <p className={sent ? 'notice proven' : 'notice due'} role="status">
        <Mark name={sent ? 'proven' : 'due'} size={32} />
        <span className="grow">{t(sent ? 'kept.sent-says' : 'kept.says')}</span>
      </p>
      {here !== null && (
        <>
          <JudgedHere />
          {here.length === 0 ? <p>{t('here.nothing')}</p> : <FindingList findings={here} />}
        </>
      )}
      <button type="button" className="button primary big" onClick={close}>
        {t('told.go-on')}
      </button>
    </section>
  );
};
