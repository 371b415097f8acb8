import { createContext, useContext, useEffect, useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { jsonAs } from '../api/json';

/** How this device likes to be shown and heard. Kept on the device, for whoever holds it next. */
export type Display = {
  readonly theme: 'auto' | 'light' | 'dark';
  readonly metric: boolean;
  readonly sound: boolean;
};
type Kept = Display & { readonly set: (change: Partial<Display>) => void };

const KEPT_AS = 'studbook.display';
const USUAL: Display = { theme: 'auto', metric: false, sound: true };

const read = (): Display => {
  const text = localStorage.getItem(KEPT_AS);
  const kept = text === null ? {} : jsonAs<Partial<Display>>(text);
  return { ...USUAL, ...kept };
};

const DisplayContext = createContext<Kept | null>(null);

export const useDisplay = (): Kept => {
  const display = useContext(DisplayContext);
  if (display === null) throw new Error('useDisplay is used outside DisplayProvider');
  return display;
};

export const DisplayProvider = ({ children }: { readonly children: ReactNode }): ReactNode => {
  const [display, setDisplay] = useState<Display>(read);

  useEffect(() => {
    localStorage.setItem(KEPT_AS, JSON.stringify(display));
    if (display.theme === 'auto') delete document.documentElement.dataset['theme'];
    else document.documentElement.dataset['theme'] = display.theme;
  }, [display]);

  const kept = useMemo<Kept>(
    () => ({ ...display, set: (change) => setDisplay((before) => ({ ...before, ...change })) }),
    [display],
  );
  return <DisplayContext value={kept}>{children}</DisplayContext>;
};
