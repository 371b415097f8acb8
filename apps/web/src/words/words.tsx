import IntlMessageFormat from 'intl-messageformat';
import { createContext, useCallback, useContext, useEffect, useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import type en from './en.json';

export type Language = 'en' | 'es';
export type WordKey = keyof typeof en;
type Catalogue = Readonly<Record<WordKey, string>>;
/** What the server says comes in both languages. */
export type Both = { readonly en: string; readonly es: string };
export type Blanks = Readonly<Record<string, string | number | null>>;

/** United States Spanish writes 12,345.678 as English does; bare Spanish would turn the signs around. */
export const LOCALES = { en: 'en-US', es: 'es-US' } as const;

const KEPT_AS = 'studbook.language';
const isLanguage = (text: string | null | undefined): text is Language => text === 'en' || text === 'es';

const firstLanguage = (): Language => {
  const kept = localStorage.getItem(KEPT_AS);
  if (isLanguage(kept)) return kept;
  const browser = navigator.language.slice(0, 2);
  return isLanguage(browser) ? browser : 'en';
};

const catalogueOf = async (language: Language): Promise<Catalogue> =>
  language === 'es' ? (await import('./es.json')).default : (await import('./en.json')).default;

export type Speech = {
  readonly language: Language;
  readonly locale: string;
  readonly speak: (language: Language) => void;
  /** A sentence of ours. */
  readonly t: (key: WordKey, blanks?: Blanks) => string;
  /** Whether there are words for this key: codes of the server make keys that we may not have. */
  readonly knows: (key: string) => key is WordKey;
  /** A sentence of the server's. */
  readonly say: (words: Both) => string;
};

const SpeechContext = createContext<Speech | null>(null);

export const useSpeech = (): Speech => {
  const speech = useContext(SpeechContext);
  if (speech === null) throw new Error('useSpeech is used outside SpeechProvider');
  return speech;
};

const speakerOf = (catalogue: Catalogue, locale: string) => {
  const formats = new Map<WordKey, IntlMessageFormat>();
  return (key: WordKey, blanks?: Blanks): string => {
    const text = catalogue[key];
    if (blanks === undefined) return text;
    const format = formats.get(key) ?? new IntlMessageFormat(text, locale, undefined, { ignoreTag: true });
    formats.set(key, format);
    return String(format.format(blanks));
  };
};

export const SpeechProvider = ({ children }: { readonly children: ReactNode }): ReactNode => {
  const [language, setLanguage] = useState<Language>(firstLanguage);
  const [loaded, setLoaded] = useState<{ language: Language; catalogue: Catalogue } | null>(null);

  useEffect(() => {
    let current = true;
    void catalogueOf(language).then((catalogue) => {
      if (current) setLoaded({ language, catalogue });
    });
    return () => {
      current = false;
    };
  }, [language]);

  const speak = useCallback((next: Language) => {
    localStorage.setItem(KEPT_AS, next);
    setLanguage(next);
  }, []);

  const speech = useMemo<Speech | null>(() => {
    if (loaded === null) return null;
    const locale = LOCALES[loaded.language];
    const say = (words: Both): string => words[loaded.language];
    const knows = (key: string): key is WordKey => Object.hasOwn(loaded.catalogue, key);
    return { language: loaded.language, locale, speak, t: speakerOf(loaded.catalogue, locale), knows, say };
  }, [loaded, speak]);

  useEffect(() => {
    if (speech !== null) document.documentElement.lang = speech.locale;
  }, [speech]);

  return speech === null ? null : <SpeechContext value={speech}>{children}</SpeechContext>;
};
