import type { Rule, Words } from '@libs/judge';
import { RULES } from '@libs/judge';

/** What a rule is about, where defects are counted by it: no operation, no value, no advice. */
const NAMES: { readonly [rule in Rule]: Words } = {
  'cover-hides-unproven': { en: 'covered unproven', es: 'tapado sin comprobar' },
  'cover-hides-defect': { en: 'covered with a defect open', es: 'tapado con un defecto abierto' },
  'required-work-unproven': { en: 'needed work unproven', es: 'trabajo necesario sin comprobar' },
  'expected-work-unproven': { en: 'expected work not recorded', es: 'trabajo esperado sin anotar' },
  'value-out-of-limits': { en: 'value out of limits', es: 'valor fuera de límites' },
  'value-missing': { en: 'value not recorded', es: 'valor sin anotar' },
  'value-of-wrong-kind': { en: 'value of another kind', es: 'valor de otro tipo' },
  'relation-not-met': { en: 'values do not agree', es: 'los valores no concuerdan' },
  'too-soon-after': { en: 'done too soon', es: 'hecho demasiado pronto' },
  'too-long-after': { en: 'test grown old', es: 'prueba que ya es vieja' },
  'operation-not-planned': { en: 'not in the build plan', es: 'no está en el plan' },
  'operation-unknown': { en: 'operation not known', es: 'operación desconocida' },
  'worked-elsewhere': { en: 'done away from its station', es: 'hecho fuera de su estación' },
  'signed-by-own-crew': { en: 'signed by its own crew', es: 'firmado por su propia cuadrilla' },
  'signer-not-qualified': { en: 'signed by someone who may not', es: 'firmado por quien no le toca' },
  'seen-after-cover': { en: 'looked at after cover', es: 'visto después de taparse' },
  'recorded-under-cover': { en: 'recorded after cover', es: 'anotado después de taparse' },
  'photo-missing': { en: 'photo missing', es: 'falta la foto' },
  'lot-missing': { en: 'lot not named', es: 'lote sin anotar' },
  'lot-not-usable': { en: 'lot not usable', es: 'lote que no se puede usar' },
  'instrument-missing': { en: 'instrument not named', es: 'instrumento sin anotar' },
  'instrument-not-usable': { en: 'instrument out of calibration', es: 'instrumento sin calibración vigente' },
  'instrument-due-soon': { en: 'calibration runs out soon', es: 'pronto vence la calibración' },
  'qualification-expired': { en: 'qualification run out', es: 'habilitación vencida' },
  'qualification-due-soon': { en: 'qualification runs out soon', es: 'pronto vence la habilitación' },
  'destination-outside-zones': { en: 'county outside the design', es: 'condado fuera del diseño' },
  held: { en: 'held', es: 'retenido' },
  'defect-open': { en: 'defect open', es: 'defecto abierto' },
  'station-skipped': { en: 'station skipped', es: 'estación saltada' },
  'shipped-already': { en: 'asked after it had left', es: 'pedido después de salir' },
  'stage-not-seen': { en: 'not seen by the agency', es: 'la agencia no la ha visto' },
  'test-not-recent': { en: 'test older than the work', es: 'prueba anterior al trabajo' },
  'left-with-open-work': { en: 'left with work open', es: 'salió con trabajo abierto' },
};

/** The rule's short name; undefined for anything that is no rule. */
export const ruleSays = (code: string): Words | undefined => {
  const rule = RULES.find((each) => each === code);
  return rule === undefined ? undefined : NAMES[rule];
};
