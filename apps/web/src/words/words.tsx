import { IntlMessageFormat } from 'intl-messageformat';
import { createContext, useCallback, useContext, useEffect, useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { knowPaths } from '../api/paths';
import type { floorWords } from './en/floor';
import type { officeWords } from './en/office';

export type Language = 'en' | 'es';
export type WordKey = keyof typeof floorWords | keyof typeof officeWords;
/** Of the office's words only once a screen has asked for them. */
type Catalogue = Readonly<Partial<Record<WordKey, string>>>;
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

const floorOf = async (language: Language): Promise<Catalogue> =>
  language === 'es' ? (await import('./es/floor')).floorWords : (await import('./en/floor')).floorWords;

/** Their paths come with their words: whoever waits for one has the other. */
const officeOf = async (language: Language): Promise<Catalogue> => {
  knowPaths((await import('../api/office-paths')).OFFICE_PATHS);
  return officeWordsOf(language);
};

const officeWordsOf = async (language: Language): Promise<Catalogue> =>
  language === 'es' ? (await import('./es/office')).officeWords : (await import('./en/office')).officeWords;

const catalogueOf = async (language: Language, office: boolean): Promise<Catalogue> => {
  const [floor, more] = await Promise.all([floorOf(language), office ? officeOf(language) : {}]);
  return { ...floor, ...more };
};

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
  /** Whether the words of the screens outside the stations are there; `fetchOffice` brings them. */
  readonly office: boolean;
  readonly fetchOffice: () => void;
};

const SpeechContext = createContext<Speech | null>(null);

export const useSpeech = (): Speech => {
  const speech = useContext(SpeechContext);
  if (speech === null) throw new Error('useSpeech is used outside SpeechProvider');
  return speech;
};

/** The build has read the messages that have blanks: see compiled-words.mts. The compiler knows them as the text they were. */
const isRead = (message: unknown): message is MessageFormatElement[] => Array.isArray(message);
type MessageFormatElement = ConstructorParameters<typeof IntlMessageFormat>[0] extends infer M
  ? Extract<M, readonly unknown[]>[number]
  : never;

const speakerOf = (catalogue: Catalogue, locale: string) => {
  const formats = new Map<WordKey, IntlMessageFormat>();
  return (key: WordKey, blanks?: Blanks): string => {
    // A floor screen that says an office word shows its key; tests/web/words.spec.ts finds such a screen first.
    const text = catalogue[key] ?? key;
    if (blanks === undefined || !isRead(text)) return text;
    const format = formats.get(key) ?? new IntlMessageFormat(text, locale);
    formats.set(key, format);
    return String(format.format(blanks));
  };
};

type Loaded = { readonly language: Language; readonly office: boolean; readonly catalogue: Catalogue };

export const SpeechProvider = ({ children }: { readonly children: ReactNode }): ReactNode => {
  const [language, setLanguage] = useState<Language>(firstLanguage);
  const [office, setOffice] = useState(false);
  const [loaded, setLoaded] = useState<Loaded | null>(null);

  useEffect(() => {
    let current = true;
    void catalogueOf(language, office).then((catalogue) => {
      if (current) setLoaded({ language, office, catalogue });
    });
    return () => {
      current = false;
    };
  }, [language, office]);

  const fetchOffice = useCallback(() => setOffice(true), []);
  const speak = useCallback((next: Language) => {
    localStorage.setItem(KEPT_AS, next);
    setLanguage(next);
  }, []);

  const speech = useMemo<Speech | null>(() => {
    if (loaded === null) return null;
    const locale = LOCALES[loaded.language];
    const say = (words: Both): string => words[loaded.language];
    const knows = (key: string): key is WordKey => Object.hasOwn(loaded.catalogue, key);
    const t = speakerOf(loaded.catalogue, locale);
    return { language: loaded.language, locale, speak, t, knows, say, office: loaded.office, fetchOffice };
  }, [loaded, speak, fetchOffice]);

  useEffect(() => {
    if (speech !== null) document.documentElement.lang = speech.locale;
  }, [speech]);

  return speech === null ? null : <SpeechContext value={speech}>{children}</SpeechContext>;
};

/** Waits for the words of the screens outside the stations. */
export const OfficeWords = ({ children }: { readonly children: ReactNode }): ReactNode => {
  const { office, fetchOffice } = useSpeech();
  useEffect(fetchOffice, [fetchOffice]);
  return office ? children : <main className="page" id="main" aria-busy="true" />;
};
