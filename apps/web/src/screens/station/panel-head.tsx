import { useEffect, useRef } from 'react';
import type { ReactNode } from 'react';
import { useSpeech } from '../../words/words';

type Props = { readonly title: string; readonly close: () => void };

/** The head of whatever stands open. It takes the focus, so that a keyboard and a screen reader go along. */
export const PanelHead = ({ title, close }: Props): ReactNode => {
  const { t } = useSpeech();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus({ preventScroll: true });
    // The serial stays on top; what lies above it gives its room to the form.
    document.getElementById('section-top')?.scrollIntoView();
  }, []);
  return (
    <div className="panel-head">
      <h2 ref={heading} tabIndex={-1}>
        {title}
      </h2>
      <button type="button" className="button" onClick={close}>
        {t('back')}
      </button>
    </div>
  );
};
