import { markSays, sourceSaysOf } from '@libs/contracts';
import type { Names } from '@libs/contracts';
import type { Words } from '@libs/judge';
import type { Evidence, NextFact, Trace } from '@libs/tracing';

/** What the counts count: homes, or sections of them. */
type UnitKind = 'home' | 'section';
type Of<K extends Evidence['kind']> = Extract<Evidence, { readonly kind: K }>;

const UNITS: { readonly [unit in UnitKind]: Words } = {
  home: { en: 'homes', es: 'casas' },
  section: { en: 'sections', es: 'secciones' },
};

/** One thing that speaks for or against a cause, in a sentence with its counts. */
export const evidenceSays = (evidence: Evidence, unit: UnitKind): Words => {
  switch (evidence.kind) {
    case 'association':
      return associationSays(evidence, UNITS[unit]);
    case 'record':
      return recordSays(evidence, UNITS[unit]);
    case 'report':
      return reportSays(evidence);
    case 'pattern':
      return patternSays(evidence);
    default:
      return plainSays(evidence, UNITS[unit]);
  }
};

const associationSays = (evidence: Of<'association'>, units: Words): Words => {
  const { exposed, others } = evidence;
  const [ratio, chance] = [ratioSays(evidence), chanceSays(evidence)];
  return {
    en: `${exposed.count} of ${exposed.of} ${units.en} that share it are claimed, ${others.count} of ${others.of} that do not${ratio.en}. ${chance.en}`,
    es: `${exposed.count} de ${exposed.of} ${units.es} que la comparten tienen reclamo, ${others.count} de ${others.of} que no${ratio.es}. ${chance.es}`,
  };
};

const ratioSays = ({ stratified, rateRatio, exposed, others }: Of<'association'>): Words => {
  const ratio = stratified ?? rateRatio;
  if (ratio === null) {
    return exposed.count > 0 && others.count === 0
      ? { en: ': no claim without it', es: ': ningún reclamo sin ella' }
      : { en: '', es: '' };
  }
  const [value, low, high] = [ratio.value, ratio.low, ratio.high].map((one) => one.toFixed(1));
  const within = stratified === null;
  return {
    en: `: ${value} times as often (95 % sure: ${low} to ${high} times${within ? '' : ', compared within month and model'})`,
    es: `: ${value} veces más a menudo (95 % de certeza: ${low} a ${high} veces${within ? '' : ', comparadas dentro de mes y modelo'})`,
  };
};

/** In plain words: how often chance alone would do it, and what is left of that after looking at so many sets. */
const chanceSays = ({ p, adjustedP }: Of<'association'>): Words => {
  const alone = {
    en: `Chance alone does so ${oftenSays(p).en}`,
    es: `El azar solo lo hace ${oftenSays(p).es}`,
  };
  if (adjustedP === null) return { en: `${alone.en}.`, es: `${alone.es}.` };
  const adjusted = oftenSays(adjustedP);
  return {
    en: `${alone.en}; allowing for everything that was looked at, ${adjusted.en}.`,
    es: `${alone.es}; contando todo lo que se miró, ${adjusted.es}.`,
  };
};

const oftenSays = (p: number): Words => {
  if (p >= 0.995) return { en: 'every time', es: 'siempre' };
  if (p >= 0.005) {
    const percent = Math.max(1, Math.round(p * 100));
    return { en: `${percent} times in 100`, es: `${percent} veces de cada 100` };
  }
  const times = Math.round(1 / p);
  const one = times > 100_000 ? '100,000' : Number(times.toPrecision(2)).toLocaleString('en-US');
  const less = times > 100_000;
  return {
    en: `${less ? 'less than ' : ''}once in ${one}`,
    es: `${less ? 'menos de ' : ''}1 vez de cada ${one}`,
  };
};

const recordSays = ({ mark, claimed, habit }: Of<'record'>, units: Words): Words => {
  const says = markSays(mark);
  return {
    en: `${says.en}: on ${claimed.count} of the ${claimed.of} claimed ${units.en} that share it; usual there: ${habit.count} of ${habit.of}`,
    es: `${says.es}: en ${claimed.count} de las ${claimed.of} ${units.es} con reclamo que la comparten; lo usual ahí: ${habit.count} de ${habit.of}`,
  };
};

const reportSays = ({ pointing, elsewhere, against }: Of<'report'>): Words => {
  const [to, away, no] = [pointing.length, elsewhere.length, against.length];
  return {
    en: `What was found on opening up: ${to} point to it, ${away} elsewhere, ${no} speak against it`,
    es: `Lo encontrado al abrir: ${to} la señalan, ${away} señalan otra, ${no} hablan en contra`,
  };
};

const patternSays = ({ pattern: { pattern, places, count, of } }: Of<'pattern'>): Words => {
  const says = PATTERN_SAYS[pattern];
  const where = places.length === 0 ? '' : ` (${places.join(', ')})`;
  return {
    en: `${says.en}${where}: ${count} of ${of} claims show it`,
    es: `${says.es}${where}: ${count} de ${of} reclamos lo muestran`,
  };
};

const PATTERN_SAYS: { readonly [pattern in Of<'pattern'>['pattern']['pattern']]: Words } = {
  place: { en: 'At the same places of the home', es: 'En los mismos lugares de la casa' },
  'at-once': { en: 'Noticed right after moving in', es: 'Notado al mudarse' },
  'first-cold-season': { en: 'Noticed in the first cold season', es: 'Notado en la primera temporada fría' },
  'after-a-year': { en: 'Noticed after a year or more', es: 'Notado después de un año o más' },
};

const plainSays = (
  evidence: Of<'unexplained' | 'without-complaint' | 'fault-map' | 'instrument'>,
  units: Words,
): Words => {
  switch (evidence.kind) {
    case 'unexplained':
      return {
        en: `It cannot explain ${evidence.count} of the ${evidence.of} claimed ${units.en}: they do not share it`,
        es: `No explica ${evidence.count} de las ${evidence.of} ${units.es} con reclamo: no la comparten`,
      };
    case 'without-complaint':
      return {
        en: `${evidence.count} of ${evidence.of} ${units.en} share it and have no such complaint`,
        es: `${evidence.count} de ${evidence.of} ${units.es} la comparten y no tienen tal queja`,
      };
    case 'fault-map':
      return mapSays(evidence);
    default:
      return evidence.outOfTolerance
        ? {
            en: 'The instrument was found out of tolerance',
            es: 'El instrumento se halló fuera de tolerancia',
          }
        : { en: 'The instrument was found good', es: 'El instrumento se halló bien' };
  }
};

const mapSays = ({ named, share: held }: Of<'fault-map'>): Words => {
  const percent = Math.round(held * 100);
  return named
    ? {
        en: `The fault map names it (${percent} % before anything was counted)`,
        es: `El mapa de fallas la nombra (${percent} % antes de contar nada)`,
      }
    : { en: 'The fault map does not name it', es: 'El mapa de fallas no la nombra' };
};

export const claimsOf = (evidence: Evidence): readonly string[] => {
  if (evidence.kind === 'record') return evidence.claims;
  return evidence.kind === 'report' ? [...evidence.pointing, ...evidence.elsewhere, ...evidence.against] : [];
};

const betweenSays = (next: NextFact, { candidates }: Trace, names: Names): Words => {
  const [one, other] = next.between.map((key) => {
    const cause = candidates.find((candidate) => candidate.key === key)?.cause;
    return cause === undefined
      ? { en: key, es: key }
      : sourceSaysOf(cause.outside ?? cause.operation ?? '', names);
  });
  return { en: `${one?.en ?? ''} / ${other?.en ?? ''}`, es: `${one?.es ?? ''} / ${other?.es ?? ''}` };
};

/** The cheapest fact that would split the first two. */
export const nextSays = (next: NextFact, trace: Trace, names: Names): Words => {
  const between = betweenSays(next, trace, names);
  switch (next.kind) {
    case 'ask-as-found':
      return {
        en: `Ask what was seen when claim ${next.claim} was opened up: it would split ${between.en}`,
        es: `Pregunte qué se vio al abrir el reclamo ${next.claim}: separaría ${between.es}`,
      };
    case 'find-record':
      return {
        en: `Find out what the record of claim ${next.claim} does not say: it would split ${between.en}`,
        es: `Averigüe lo que el registro del reclamo ${next.claim} no dice: separaría ${between.es}`,
      };
    case 'look-again':
      return {
        en: `Look at claim ${next.claim} again: it shares one of the two and not the other (${between.en})`,
        es: `Mire otra vez el reclamo ${next.claim}: comparte una de las dos y no la otra (${between.es})`,
      };
    default:
      return {
        en: `Nothing on record can tell these apart: ${between.en}`,
        es: `Nada en el registro las distingue: ${between.es}`,
      };
  }
};
