import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { usePrintFoot } from '../../look/print-foot';
import { useSignedIn } from '../../session/session';
import { Barcode } from '../../ui/barcode';
import { Serial } from '../../ui/serial';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { AnotherRevision } from './another-revision';
import { DeviationForm } from './deviation-form';
import { OrderForm } from './order-form';
import { PlanStation } from './plan-station';
import './traveler.css';

type Plan = AnswerOf<'buildPlan'>;

/** The paper that goes with a section: what it needs, station by station, with values resolved for its design. */
export const TravelerScreen = ({ serial }: { readonly serial: string }): ReactNode => {
  const { answer, trouble, again } = useQuestion('buildPlan', { serial });
  return (
    <main className="page stack traveler" id="main">
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {answer !== null && <Traveler plan={answer} changed={again} />}
    </main>
  );
};

const MANAGERS: readonly string[] = ['quality-manager', 'administrator'];

const Traveler = ({ plan, changed }: { readonly plan: Plan; readonly changed: () => void }): ReactNode => {
  const { t, say } = useSpeech();
  const { me } = useSignedIn();
  const { serial, revision, position } = plan;
  usePrintFoot(t('plan.foot', { serial, revision, position }));
  return (
    <>
      <div className="page-head">
        <div>
          <h1>{t('plan.title', { serial })}</h1>
          <p>
            {plan.model} · {t('plan.revision', { revision })}
            {!plan.started && ` · ${t('plan.not-started')}`}
          </p>
        </div>
        <button type="button" className="button no-print" onClick={() => window.print()}>
          {t('book.print')}
        </button>
      </div>
      {plan.started && me.roles.some((role) => MANAGERS.includes(role)) && (
        <AnotherRevision plan={plan} changed={changed} />
      )}
      {me.roles.some((role) => MANAGERS.includes(role)) && <OrderForm plan={plan} changed={changed} />}
      {plan.started && me.roles.includes('quality-manager') && (
        <DeviationForm plan={plan} changed={changed} />
      )}
      <p className="governing">{say(plan.governing)}</p>
      <p>{plan.design.map(({ says }) => say(says)).join(' · ')}</p>
      {plan.stations.map((station) => (
        <section key={station.id} className="traveler-station stack tight">
          <header>
            <h2>{say(station.name)}</h2>
            <div className="traveler-code">
              <Barcode of={serial} />
              <Serial of={serial} />
            </div>
          </header>
          <PlanStation of={station} />
        </section>
      ))}
    </>
  );
};
