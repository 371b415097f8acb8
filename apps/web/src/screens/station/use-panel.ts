import { useCallback, useEffect, useState } from 'react';
import { jsonAs } from '../../api/json';
import { NOTHING } from './panel';
import type { Panel } from './panel';

/** What is worth coming back to: forms. An answer is in the history. */
const FORMS: ReadonlySet<Panel['show']> = new Set([
  'sign-off',
  'record',
  'defect',
  'hold',
  'pull',
  'lot',
  'label',
  'correct',
]);

const KEPT_AS = 'studbook.panels';
type Panels = { readonly [key: string]: Panel };
const kept = (): Panels => jsonAs<Panels>(sessionStorage.getItem(KEPT_AS) ?? '{}');

const keep = (key: string, panel: Panel): void => {
  const { [key]: _before, ...others } = kept();
  const next: Panels = FORMS.has(panel.show) ? { ...others, [key]: panel } : others;
  sessionStorage.setItem(KEPT_AS, JSON.stringify(next));
};

/** Whether the browser stands at a step of its history that a panel made. */
const onStep = (): boolean =>
  jsonAs<{ panel?: true } | null>(JSON.stringify(window.history.state))?.panel === true;
const makeStep = (): void => {
  if (!onStep()) window.history.pushState({ panel: true }, '', window.location.href);
};

export type OpenPanel = {
  readonly panel: Panel;
  readonly show: (panel: Panel) => void;
  readonly close: () => void;
};

/**
 * What stands open beside the list. It is a step in the browser's history, so that Back closes it and not the section;
 * and a form that was open is open again after a reload, a new session or a scan of another section in between.
 */
export const usePanel = (key: string): OpenPanel => {
  const [panel, setPanel] = useState<Panel>(() => kept()[key] ?? NOTHING);
  const isOpen = panel.show !== 'nothing';

  const show = useCallback(
    (next: Panel) => {
      keep(key, next);
      setPanel(next);
    },
    [key],
  );
  const close = useCallback(() => {
    // The browser's going back is heard below.
    if (onStep()) window.history.back();
    else show(NOTHING);
  }, [show]);

  useEffect(() => {
    if (!isOpen) return undefined;
    makeStep();
    const stepped = (): void => {
      if (!onStep()) show(NOTHING);
    };
    const pressed = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') close();
    };
    window.addEventListener('popstate', stepped);
    window.addEventListener('keydown', pressed);
    return () => {
      window.removeEventListener('popstate', stepped);
      window.removeEventListener('keydown', pressed);
    };
  }, [isOpen, show, close]);

  return { panel, show, close };
};
