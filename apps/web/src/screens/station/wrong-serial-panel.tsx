import type { ReactNode } from 'react';
import { ScanField } from '../../scan/scan-field';
import { Serial } from '../../ui/serial';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import type { Card } from './cards';
import { PanelHead } from './panel-head';
import { useTelling } from './use-telling';
import { useWork } from './work-context';

/** Signed on the wrong half? One tap on the right one moves the entry, in one commit. */
export const WrongSerialPanel = ({ card }: { readonly card: Card }): ReactNode => {
  const { t, say } = useSpeech();
  const { section, station, close, told } = useWork();
  const telling = useTelling();
  const move = async (belongsTo: string): Promise<void> => {
    const body = { recordedOn: section.serial, belongsTo, operation: card.operation, station: station.id };
    told(
      await telling.send('wrongSerial', body),
      t('told.moved-serial', { work: say(card.name), serial: belongsTo }),
    );
  };
  return (
    <section className="stack">
      <PanelHead title={t('wrong-serial.title', { work: say(card.name) })} close={close} />
      <p>{t('wrong-serial.says')}</p>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <div className="choices">
        {section.sections
          .filter(({ serial }) => serial !== section.serial)
          .map(({ serial }) => (
            <button
              key={serial}
              type="button"
              className="button primary big"
              disabled={telling.busy}
              onClick={() => void move(serial)}
            >
              <span>
                {t('wrong-serial.belongs')} <Serial of={serial} />
              </span>
            </button>
          ))}
      </div>
      <ScanField label={t('wrong-serial.another')} found={(serial) => void move(serial)} />
    </section>
  );
};
