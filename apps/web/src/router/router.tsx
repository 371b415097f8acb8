import { useSyncExternalStore } from 'react';
import type { AnchorHTMLAttributes, MouseEvent, ReactNode } from 'react';

/** The address bar is the one place that knows which screen is open; everything else asks it. */
const listeners = new Set<() => void>();
const announce = (): void => listeners.forEach((listener) => listener());

const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  window.addEventListener('popstate', listener);
  return () => {
    listeners.delete(listener);
    window.removeEventListener('popstate', listener);
  };
};
const address = (): string => window.location.pathname + window.location.search;

export const useAddress = (): URL =>
  new URL(useSyncExternalStore(subscribe, address), window.location.origin);

export const goTo = (to: string): void => {
  if (to === address()) return;
  window.history.pushState(null, '', to);
  window.scrollTo(0, 0);
  announce();
};

/** The same screen with another filter: going back leaves the screen, not the filter. */
export const swapTo = (to: string): void => {
  window.history.replaceState(null, '', to);
  announce();
};

type LinkProps = AnchorHTMLAttributes<HTMLAnchorElement> & {
  readonly to: string;
  readonly children: ReactNode;
};

const opensElsewhere = (event: MouseEvent): boolean =>
  event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey;

export const Link = ({ to, children, onClick, ...rest }: LinkProps): ReactNode => (
  <a
    {...rest}
    href={to}
    onClick={(event) => {
      onClick?.(event);
      if (event.defaultPrevented || opensElsewhere(event)) return;
      event.preventDefault();
      goTo(to);
    }}
  >
    {children}
  </a>
);
