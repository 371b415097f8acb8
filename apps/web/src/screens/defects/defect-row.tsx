import { useState } from 'react';
import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { isQualityManager, useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { useNow } from '../../ui/now';
import { Serial } from '../../ui/serial';
import { TroubleNotice } from '../../ui/trouble';
import { named } from '../../words/named';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { OpenDefect } from './open-defect';
import { CauseForm, DispositionForm } from './decision-forms';

const DISPOSITION_WORDS = {
  rework: 'disposition.rework',
  repair: 'disposition.repair',
  'use-as-is': 'disposition.use-as-is',
  scrap: 'disposition.scrap',
} as const;
const SEVERITY_WORDS = {
  minor: 'severity.minor',
  major: 'severity.major',
  critical: 'severity.critical',
} as const;

type Props = { readonly defect: OpenDefect; readonly again: () => void };

const Facts = ({ defect }: { readonly defect: OpenDefect }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const { operation, charged, severity, disposition, agency, state } = defect;
  const facts = [
    ...(agency ? [t('defects.by-agency')] : []),
    ...(severity === null ? [] : [t(SEVERITY_WORDS[severity])]),
    ...(operation === null
      ? [t('defects.no-cause')]
      : [
          t('defects.cause', {
            operation: say(named(plant.operations, operation)),
            station: say(named(plant.stations, charged ?? '')),
          }),
        ]),
    ...(disposition === null ? [] : [t(DISPOSITION_WORDS[disposition])]),
    ...(state === 'reworked' ? [t('defect.reworked')] : []),
  ];
  return <p className="quiet small">{facts.join(' · ')}</p>;
};

export const DefectRow = ({ defect, again }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { me } = useSignedIn();
  const times = useTimes();
  const now = useNow();
  const [form, setForm] = useState<'none' | 'disposition' | 'cause'>('none');
  const done = (): void => {
    setForm('none');
    again();
  };
  const toggle = (which: 'disposition' | 'cause'): void =>
    setForm((before) => (before === which ? 'none' : which));
  const decides = isQualityManager(me);
  return (
    <li>
      <Mark name={defect.state === 'reworked' ? 'open-at-places' : 'refused'} size={28} />
      <div className="grow stack tight">
        <p>
          <Link to={places.home(defect.serial)}>
            <Serial of={defect.serial} />
          </Link>{' '}
          {say(defect.says)}
        </p>
        <Facts defect={defect} />
      </div>
      <p className="age">{times.since(defect.occurredAt, now)}</p>
      <div className="choices no-print">
        {defect.class === 'nonconformance' && decides && (
          <button
            type="button"
            className="button"
            aria-pressed={form === 'disposition'}
            onClick={() => toggle('disposition')}
          >
            {t('defects.decide')}
          </button>
        )}
        {decides && (
          <button
            type="button"
            className="button"
            aria-pressed={form === 'cause'}
            onClick={() => toggle('cause')}
          >
            {t('defects.change-cause')}
          </button>
        )}
        {defect.state === 'reworked' && <Verify defect={defect} again={again} />}
        {defect.operation !== null && defect.class === 'nonconformance' && (
          <Link className="button plain" to={places.sharing(defect.serial, defect.operation, defect.defect)}>
            {t('defects.contain')}
          </Link>
        )}
      </div>
      {form === 'disposition' && <DispositionForm defect={defect} done={done} />}
      {form === 'cause' && <CauseForm defect={defect} done={done} />}
    </li>
  );
};

const Verify = ({ defect, again }: Props): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(again);
  const verify = (accepted: boolean): void => {
    void telling.send('verification', { serial: defect.serial, accepted }, { defect: defect.defect });
  };
  return (
    <>
      <button type="button" className="button" disabled={telling.busy} onClick={() => verify(true)}>
        {t('defect.accept')}
      </button>
      <button type="button" className="button" disabled={telling.busy} onClick={() => verify(false)}>
        {t('defect.reject')}
      </button>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
    </>
  );
};
