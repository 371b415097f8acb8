import { useState } from 'react';
import type { ReactNode } from 'react';
import { useLive } from '../../api/live';
import { useQuestion } from '../../api/use-question';
import { useSoon } from '../../ui/soon';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { DefectRow } from './defect-row';
import '../release/release.css';

const CLASSES = ['nonconformance', 'punch', 'shortage', 'record'] as const;
type Class = (typeof CLASSES)[number];
const CLASS_WORDS = {
  nonconformance: 'class.nonconformance',
  punch: 'class.punch',
  shortage: 'class.shortage',
  record: 'class.record',
} as const;

/** What is open, the oldest first, and what becomes of it. */
export const DefectsScreen = (): ReactNode => {
  const { t } = useSpeech();
  const [only, setOnly] = useState<Class>('nonconformance');
  const { answer, trouble, again } = useQuestion('openDefects', { class: only });
  const soon = useSoon(again);
  useLive(soon);
  const defects = answer?.defects ?? [];
  return (
    <main className="page" id="main" aria-busy={answer === null}>
      <div className="page-head">
        <div>
          <h1>{answer === null ? t('nav.defects') : t('defects.title', { count: defects.length })}</h1>
          <p>{t(CLASS_WORDS[only])}</p>
        </div>
        <div className="choices no-print" role="group" aria-label={t('defects.which')}>
          {CLASSES.map((name) => (
            <button
              key={name}
              type="button"
              className="button"
              aria-pressed={only === name}
              onClick={() => setOnly(name)}
            >
              {t(CLASS_WORDS[name])}
            </button>
          ))}
        </div>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      <ul className="rows">
        {defects.map((defect) => (
          <DefectRow key={`${defect.serial} ${defect.defect}`} defect={defect} again={again} />
        ))}
      </ul>
    </main>
  );
};
