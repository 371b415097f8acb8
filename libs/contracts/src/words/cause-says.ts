import type { Words } from '@libs/judge';
import type { Names } from './names';

/** What outside the line may be the cause: codes every fault map shares. */
const OUTSIDE: { readonly [code: string]: Words } = {
  'x-road': { en: 'haul', es: 'transporte' },
  'x-set': { en: 'setting', es: 'instalación en el sitio' },
  'x-site': { en: 'site work', es: 'trabajo en el sitio' },
  'x-maker': { en: 'bought part', es: 'pieza comprada' },
  'x-alter': { en: 'alteration', es: 'alteración' },
  'x-use': { en: 'use', es: 'uso' },
  office: { en: 'design office', es: 'oficina de diseño' },
};
export const OUTSIDE_CAUSES: readonly string[] = Object.keys(OUTSIDE);

export const sourceSaysOf = (source: string, names: Names): Words =>
  OUTSIDE[source] ?? names.operation(source);

const FACTORS: { readonly [factor: string]: Words } = {
  lot: { en: 'lot {value}', es: 'lote {value}' },
  maker: { en: 'maker {value}', es: 'fabricante {value}' },
  crew: { en: 'crew {value}', es: 'cuadrilla {value}' },
  shift: { en: 'shift {value}', es: 'turno {value}' },
  instrument: { en: 'instrument {value}', es: 'instrumento {value}' },
  design: { en: 'design {value}', es: 'diseño {value}' },
  revision: { en: 'rulebook revision {value}', es: 'revisión {value} del manual de reglas' },
  window: { en: 'homes begun {value}', es: 'casas empezadas {value}' },
  unrecorded: { en: 'not on record, perhaps never done', es: 'sin registro, quizá no se hizo' },
  hauler: { en: 'hauler {value}', es: 'transportista {value}' },
  installer: { en: 'installer {value}', es: 'instalador {value}' },
  retailer: { en: 'retailer {value}', es: 'vendedor {value}' },
  every: { en: 'the way it is always done', es: 'como se hace siempre' },
};

type CauseSaid = {
  readonly operation: string | null;
  readonly station: string | null;
  readonly outside: string | null;
  readonly factor: string;
  readonly value: string | null;
};

/** A cause in one line: `Receptacles trimmed (Electrical): lot RB-7`. */
export const causeSays = (cause: CauseSaid, names: Names): Words => {
  const source = sourceSaysOf(cause.outside ?? cause.operation ?? '', names);
  const station = cause.station === null ? null : names.station(cause.station);
  const crew = cause.factor === 'crew' && cause.value !== null ? names.crew(cause.value) : null;
  const factor = FACTORS[cause.factor] ?? { en: cause.factor, es: cause.factor };
  const inLanguage = (language: 'en' | 'es'): string => {
    const value = (crew?.[language] ?? cause.value ?? '').replace('..', language === 'en' ? ' to ' : ' a ');
    const at = station === null ? '' : ` (${station[language]})`;
    return `${source[language]}${at}: ${factor[language].replace('{value}', value)}`;
  };
  return { en: inLanguage('en'), es: inLanguage('es') };
};

const MARKS: { readonly [mark: string]: Words } = {
  missing: { en: 'Not on record', es: 'Sin registro' },
  late: { en: 'Entered late', es: 'Anotado tarde' },
  corrected: { en: 'Corrected (no guilt)', es: 'Corregido (no es culpa)' },
  refused: { en: 'Asking refused', es: 'Consulta rechazada' },
  'near-limit': { en: 'Near its limit', es: 'Cerca de su límite' },
  'out-of-limit': { en: 'Out of its limit', es: 'Fuera de su límite' },
  reworked: { en: 'Reworked', es: 'Retrabajado' },
  defect: { en: 'Defect caught in the plant', es: 'Defecto hallado en planta' },
  'covered-soon': { en: 'Covered soon after', es: 'Cubierto poco después' },
  'instrument-out': {
    en: 'Measured while its instrument was out',
    es: 'Medido con instrumento fuera de tolerancia',
  },
};
export const markSays = (mark: string): Words => MARKS[mark] ?? { en: mark, es: mark };

const CONFIDENCE: { readonly [word: string]: Words } = {
  'almost-sure': { en: 'almost sure', es: 'casi seguro' },
  likely: { en: 'likely', es: 'probable' },
  possible: { en: 'possible', es: 'posible' },
  unlikely: { en: 'unlikely', es: 'poco probable' },
};
export const confidenceSays = (word: string): Words => CONFIDENCE[word] ?? { en: word, es: word };

const VERDICTS: { readonly [verdict: string]: Words } = {
  'common-cause': { en: 'One cause is likelier than not', es: 'Una causa es más probable que no' },
  undecided: { en: 'Not decided by what is on record', es: 'Lo registrado no decide' },
  'no-common-cause': {
    en: 'These claims likely have no cause in common',
    es: 'Estos reclamos probablemente no tienen causa común',
  },
};
export const verdictSays = (verdict: string): Words => VERDICTS[verdict] ?? { en: verdict, es: verdict };

const REASONS: { readonly [reason: string]: Words } = {
  recorded: { en: 'On its record', es: 'Consta en su registro' },
  'rows-around-agree': {
    en: 'Not recorded; homes built before and after had it',
    es: 'Sin registro; las casas de antes y después lo tuvieron',
  },
  'cannot-be-excluded': { en: 'Cannot be excluded', es: 'No se puede excluir' },
};
export const exposureReasonSays = (reason: string): Words => REASONS[reason] ?? { en: reason, es: reason };

/** The terms of 24 CFR 3282.7; what falls under which is for the regulation and counsel to say. */
const SEVERITY: { readonly [severity: string]: Words } = {
  'imminent-safety-hazard': { en: 'imminent safety hazard', es: 'peligro inminente para la seguridad' },
  'serious-defect': { en: 'serious defect', es: 'defecto grave' },
  defect: { en: 'defect', es: 'defecto' },
  noncompliance: { en: 'noncompliance', es: 'incumplimiento' },
  'no-action': { en: 'no action needed', es: 'no hace falta actuar' },
};
export const severitySays = (severity: string): Words => SEVERITY[severity] ?? { en: severity, es: severity };

const CLOCKS: { readonly [clock: string]: Words } = {
  'initial-determination': { en: 'Initial determination', es: 'Determinación inicial' },
  'notify-at-once': {
    en: 'Notify HUD, the state agency and the inspection agency at once',
    es: 'Avisar de inmediato a HUD, la agencia estatal y la de inspección',
  },
  'class-determination': { en: 'Class determination', es: 'Determinación de la clase' },
  plan: { en: 'Submit the notification plan', es: 'Presentar el plan de aviso' },
  corrections: { en: 'Finish corrections', es: 'Terminar las correcciones' },
  notices: { en: 'Finish notices', es: 'Terminar los avisos' },
  report: { en: 'Report completion', es: 'Informar el cierre' },
};
export const clockSays = (clock: string): Words => CLOCKS[clock] ?? { en: clock, es: clock };
