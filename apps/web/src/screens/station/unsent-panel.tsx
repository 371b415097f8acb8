import type { ReactNode } from 'react';
import { useUnsent } from '../../api/outbox';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import { PanelHead } from './panel-head';
import { useWork } from './work-context';

/** Nobody answered. Says plainly what became of the entry; sending again stands at the top of every screen. */
export const UnsentPanel = (): ReactNode => {
  const { t } = useSpeech();
  const { close } = useWork();
  const sent = useUnsent().every(({ state }) => state === 'new');
  return (
    <section className="stack">
      <PanelHead title={t(sent ? 'kept.sent' : 'kept.title')} close={close} />
      <p className={sent ? 'notice proven' : 'notice due'} role="status">
        <Mark name={sent ? 'proven' : 'due'} size={32} />
        <span className="grow">{t(sent ? 'kept.sent-says' : 'kept.says')}</span>
      </p>
    </section>
  );
};
