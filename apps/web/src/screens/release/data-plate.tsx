import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { Mark } from '../../ui/mark';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';

/** What the data plate says, line by line, and which of it is not there yet. */
export const DataPlate = ({ home }: { readonly home: string }): ReactNode => {
  const { t, say } = useSpeech();
  const { answer, trouble, again } = useQuestion('dataPlate', { serial: home });
  if (trouble !== null) return <TroubleNotice trouble={trouble} again={again} />;
  if (answer === null || answer.items.length === 0) return null;
  return (
    <section className="plate-frame stack" aria-labelledby="plate">
      <h2 id="plate">{t('plate.title')}</h2>
      <p className="quiet small">
        {answer.differs.length === 0 ? t('plate.whole') : t('plate.lacks', { count: answer.differs.length })}
      </p>
      <dl className="plate">
        {answer.items.map((item) => (
          <div key={item.id}>
            <dt>{say(item.name)}</dt>
            <dd>
              {item.says === null ? (
                <span className="row">
                  <Mark name="due" size={20} /> {t('plate.not-yet')}
                </span>
              ) : (
                say(item.says)
              )}
            </dd>
          </div>
        ))}
      </dl>
      <p className="quiet small">{t('plate.source')}</p>
    </section>
  );
};
