import { useEffect, useRef } from 'react';
import { SILENCE, continues, scanned, typed } from './burst';

type TextField = HTMLInputElement | HTMLTextAreaElement;
type Before = { readonly field: TextField; readonly value: string };

const fieldOf = (target: EventTarget | null): TextField | null =>
  target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement ? target : null;

/** Puts a field back as it stood before the scanner typed into it, in a way that React takes notice of. */
const putBack = ({ field, value }: Before): void => {
  const kind = field instanceof HTMLInputElement ? HTMLInputElement.prototype : HTMLTextAreaElement.prototype;
  Object.getOwnPropertyDescriptor(kind, 'value')?.set?.call(field, value);
  field.dispatchEvent(new Event('input', { bubbles: true }));
};

/** Hears a scanner wherever the focus is; a form that was open keeps what it held. */
export const useWedge = (onScan: (text: string) => void): void => {
  const latest = useRef(onScan);
  useEffect(() => {
    latest.current = onScan;
  });

  useEffect(() => {
    let burst = SILENCE;
    let before: Before | null = null;

    const hear = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const field = fieldOf(event.target);
      const stroke = { atMs: event.timeStamp, inField: field !== null };
      if (event.key === 'Enter') {
        const text = scanned(burst, stroke);
        burst = SILENCE;
        if (text === null) return;
        event.preventDefault();
        event.stopImmediatePropagation();
        if (before !== null) putBack(before);
        latest.current(text);
      } else if (event.key.length === 1) {
        if (!continues(burst, stroke)) before = field && { field, value: field.value };
        burst = typed(burst, event.key, stroke);
      }
    };
    document.addEventListener('keydown', hear, { capture: true });
    return () => document.removeEventListener('keydown', hear, { capture: true });
  }, []);
};
