import { markSays, sourceSaysOf } from '@libs/contracts';
import type { Names } from '@libs/contracts';
import type { Words } from '@libs/judge';
import type { Evidence, NextFact, Trace } from '@libs/tracing';

const share = ({ count, of }: Counted): string => `${count} / ${of}`;
type Counted = { readonly count: number; readonly of: number };

const small = (p: number): string => (p < 0.0001 ? '< 0.0001' : p.toPrecision(2));
const times = (estimate: { readonly value: number; readonly low: number; readonly high: number }): string =>
  `${estimate.value.toFixed(1)} (95 %: ${estimate.low.toFixed(1)}–${estimate.high.toFixed(1)})`;

type Of<K extends Evidence['kind']> = Extract<Evidence, { readonly kind: K }>;

/** One thing that speaks for or against a cause, in a sentence with its counts. */
export const evidenceSays = (evidence: Evidence, names: Names): Words => {
  switch (evidence.kind) {
    case 'association':
      return associationSays(evidence);
    case 'record':
      return recordSays(evidence);
    case 'report':
      return reportSays(evidence, names);
    case 'pattern':
      return patternSays(evidence);
    default:
      return plainSays(evidence);
  }
};

const associationSays = ({
  exposed,
  others,
  p,
  adjustedP,
  stratified,
  rateRatio,
}: Of<'association'>): Words => {
  const ratio = stratified ?? rateRatio;
  const tail = [
    ...(ratio === null ? [] : [`× ${times(ratio)}`]),
    `p ${small(p)}`,
    ...(adjustedP === null ? [] : [`q ${small(adjustedP)}`]),
  ].join(', ');
  return {
    en: `Claimed: ${share(exposed)} that share it, ${share(others)} that do not (${tail})`,
    es: `Con reclamo: ${share(exposed)} que la comparten, ${share(others)} que no (${tail})`,
  };
};

const recordSays = ({ mark, claimed, habit }: Of<'record'>): Words => {
  const says = markSays(mark);
  return {
    en: `${says.en}: ${share(claimed)} claimed; everywhere ${share(habit)}`,
    es: `${says.es}: ${share(claimed)} con reclamo; en todas ${share(habit)}`,
  };
};

const reportSays = ({ pointing, elsewhere, against }: Of<'report'>, _names: Names): Words => ({
  en: `As-found reports: ${pointing.length} point to it, ${elsewhere.length} elsewhere, ${against.length} against it`,
  es: `Informes de lo encontrado: ${pointing.length} la señalan, ${elsewhere.length} a otra, ${against.length} en contra`,
});

const patternSays = ({ pattern }: Of<'pattern'>): Words => ({
  en: `Pattern ${pattern.pattern}: ${share(pattern)} claims show it`,
  es: `Patrón ${pattern.pattern}: ${share(pattern)} reclamos lo muestran`,
});

const plainSays = (evidence: Of<'unexplained' | 'without-complaint' | 'fault-map' | 'instrument'>): Words => {
  switch (evidence.kind) {
    case 'unexplained':
      return {
        en: `It cannot explain ${share(evidence)} claimed homes: they do not share it`,
        es: `No explica ${share(evidence)} casas con reclamo: no la comparten`,
      };
    case 'without-complaint':
      return {
        en: `${share(evidence)} homes share it and have no such complaint`,
        es: `${share(evidence)} casas la comparten y no tienen tal queja`,
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
        en: `The fault map names it (${percent} % beforehand)`,
        es: `El mapa de fallas la nombra (${percent} % de antemano)`,
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
