import { useEffect } from 'react';
import { useSpeech } from '../words/words';

/** Stand for the page's own counters until the words around them are known. */
const PAGE = '\u0001';
const PAGES = '\u0002';

const quoted = (text: string): string => `"${text.replace(/["\\]/g, '\\$&')}"`;

/** The words with the printer's counters between them, as CSS `content` has it. */
const contentOf = (words: string): string =>
  words
    .split(/([\u0001\u0002])/)
    .map((piece) => (piece === PAGE ? 'counter(page)' : piece === PAGES ? 'counter(pages)' : quoted(piece)))
    .join(' ');

/** At the foot of every printed page: what it is about, where the ledger stood, and page x of y. */
export const usePrintFoot = (text: string): void => {
  const { t } = useSpeech();
  const count = t('print.page', { page: PAGE, pages: PAGES });
  useEffect(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(`@page {
      margin: 16mm 14mm 20mm;
      @bottom-left { content: ${contentOf(text)}; font: 9pt sans-serif; }
      @bottom-right { content: ${contentOf(count)}; font: 9pt sans-serif; }
    }`);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((other) => other !== sheet);
    };
  }, [text, count]);
};
