import { useCallback, useState } from 'react';
import { jsonAs } from '../../api/json';

const KEPT_AS = 'studbook.drafts';

/**
 * What was entered and not yet sent, by section and form. A scan of another section, a reload or the end of a session
 * while a form is open must lose nothing: whoever comes back finds the form as it was left. It goes with the window.
 */
const drafts = new Map<string, unknown>(
  Object.entries(jsonAs<object>(sessionStorage.getItem(KEPT_AS) ?? '{}')),
);
const keep = (): void => sessionStorage.setItem(KEPT_AS, JSON.stringify(Object.fromEntries(drafts)));

/** The only writer of a key is the form that reads it, so what is kept has the form's own type. */
const kept = <D>(key: string): D | undefined => drafts.get(key) as D | undefined;

export type Draft<D> = {
  readonly draft: D;
  readonly change: (part: Partial<D>) => void;
  readonly forget: () => void;
};

export const useDraft = <D extends object>(key: string, empty: D): Draft<D> => {
  const [draft, setDraft] = useState<D>(() => kept<D>(key) ?? empty);
  const change = useCallback(
    (part: Partial<D>) =>
      setDraft((before) => {
        const next = { ...before, ...part };
        drafts.set(key, next);
        keep();
        return next;
      }),
    [key],
  );
  const forget = useCallback(() => {
    drafts.delete(key);
    keep();
  }, [key]);
  return { draft, change, forget };
};
