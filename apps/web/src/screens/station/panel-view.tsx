import { assertNever } from '@libs/kernel';
import { Suspense, lazy } from 'react';
import type { ReactNode } from 'react';
import { UnsentPanel } from './unsent-panel';
import { LotForm } from './lot-form';
import type { CardPanel, Panel, PlainPanel } from './panel';
import { RecordForm } from './record-form';
import { SignOffForm } from './sign-off-form';
import { ToldPanel } from './told-panel';
import { VerdictPanel } from './verdict-panel';

/** Rarer forms come when they are asked for. */
const DefectForm = lazy(() => import('./defect-form').then((m) => ({ default: m.DefectForm })));
const LaidOpenForm = lazy(() => import('./laid-open-form').then((m) => ({ default: m.LaidOpenForm })));
const CorrectForm = lazy(() => import('./correct-form').then((m) => ({ default: m.CorrectForm })));
const LabelForm = lazy(() => import('./label-form').then((m) => ({ default: m.LabelForm })));
const ReasonForm = lazy(() => import('./reason-forms').then((m) => ({ default: m.ReasonForm })));
const WrongSerialPanel = lazy(() =>
  import('./wrong-serial-panel').then((m) => ({ default: m.WrongSerialPanel })),
);

const PLAIN: { readonly [S in PlainPanel['show']]: () => ReactNode } = {
  nothing: () => null,
  'sign-off': () => <SignOffForm />,
  defect: () => <DefectForm />,
  hold: () => <ReasonForm key="hold" use="hold" />,
  pull: () => <ReasonForm key="pull" use="pull" />,
  lot: () => <LotForm />,
  kept: () => <UnsentPanel />,
};
const isPlain = (panel: Panel): panel is PlainPanel => Object.hasOwn(PLAIN, panel.show);

const cardContent = (panel: CardPanel): ReactNode => {
  switch (panel.show) {
    case 'record':
      return <RecordForm key={panel.card.operation} card={panel.card} then={panel.then} />;
    case 'verdict':
      return <VerdictPanel key={panel.answer.position} card={panel.card} answer={panel.answer} />;
    case 'told':
      return <ToldPanel key={panel.answer.position} panel={panel} />;
    case 'label':
      return <LabelForm card={panel.card} />;
    case 'laid-open':
      return <LaidOpenForm card={panel.card} />;
    case 'correct':
      return <CorrectForm card={panel.card} />;
    case 'wrong-serial':
      return <WrongSerialPanel card={panel.card} />;
    default:
      return assertNever(panel);
  }
};

export const PanelView = ({ panel }: { readonly panel: Panel }): ReactNode =>
  panel.show === 'nothing' ? null : (
    <div className="panel">
      <Suspense fallback={null}>{isPlain(panel) ? PLAIN[panel.show]() : cardContent(panel)}</Suspense>
    </div>
  );
