import type { Outcome } from '../verifying/outcome';
import { FAILED_WORDS } from './failed-words';
import { OPEN_WORDS, PROVEN_WORDS } from './proven-words';
import type { Words } from './words';

const SAYS: Readonly<Record<string, Words>> = { ...PROVEN_WORDS, ...FAILED_WORDS, ...OPEN_WORDS };

const KINDS: Readonly<Record<string, Words>> = {
  home: { en: 'home', es: 'la casa' },
  section: { en: 'section', es: 'la sección' },
  lot: { en: 'lot', es: 'el lote' },
  instrument: { en: 'instrument', es: 'el instrumento' },
  person: { en: 'person', es: 'la persona' },
  plant: { en: 'plant', es: 'la planta' },
  rulebook: { en: 'rulebook', es: 'el reglamento' },
};

/** One outcome as a sentence. These words lie beside the proof, so that a page can say them with no server. */
export const outcomeSays = ({ code, place, values }: Outcome): Words => {
  const words = SAYS[code] ?? { en: code, es: code };
  const stream = streamSays(place.stream ?? '');
  const filled = { ...values, ...place };
  return {
    en: capital(fill(words.en, { ...filled, stream: stream.en })),
    es: capital(fill(words.es, { ...filled, stream: stream.es })),
  };
};

const streamSays = (stream: string): Words => {
  const cut = stream.indexOf('/');
  const kind = KINDS[stream.slice(0, cut)];
  if (kind === undefined) return { en: stream, es: stream };
  const id = stream.slice(cut + 1);
  return { en: `${kind.en} ${id}`, es: `${kind.es} ${id}` };
};

/** What is not known is left open, not left out: a reader sees that it is missing. */
const fill = (text: string, values: Readonly<Record<string, string | number | undefined>>): string =>
  text.replace(/\{(\w+)\}/g, (_, name: string) => String(values[name] ?? '?'));

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
