import { textIn } from './event-data';
import { severitySays, sourceSaysOf } from './cause-says';
import type { Sayings } from './saying';

/** From a complaint to what was determined of it. */
export const claimEvents: Sayings = {
  ComplaintLogged: (data) => ({
    en: `Complaint received ${textIn(data, 'receivedOn')}.`,
    es: `Queja recibida el ${textIn(data, 'receivedOn')}.`,
  }),
  ComplaintDismissed: () => ({
    en: 'No failure found in the complaint.',
    es: 'La queja no muestra una falla.',
  }),
  ClaimOpened: (data, names) => {
    const component = names.component(textIn(data, 'component'));
    const symptom = names.symptom(textIn(data, 'symptom'));
    return {
      en: `Claim: ${component.en}, ${symptom.en}.`,
      es: `Reclamo: ${component.es}, ${symptom.es}.`,
    };
  },
  ClaimDetermined: (data) => ({
    en: `Decided ${textIn(data, 'decidedOn')}: ${severitySays(textIn(data, 'severity')).en}.`,
    es: `Decidido el ${textIn(data, 'decidedOn')}: ${severitySays(textIn(data, 'severity')).es}.`,
  }),
  CauseConfirmed: (data, names) => {
    const { outside } = data;
    const source = sourceSaysOf(typeof outside === 'string' ? outside : textIn(data, 'operation'), names);
    return { en: `Cause confirmed: ${source.en}.`, es: `Causa confirmada: ${source.es}.` };
  },
  AsFoundReported: () => ({ en: 'As-found report came in.', es: 'Llegó el informe de lo encontrado.' }),
  DeliveryRecorded: (data) => ({
    en: `Delivered to ${textIn(data, 'retailer')}, set ${textIn(data, 'setOn')}.`,
    es: `Entregada a ${textIn(data, 'retailer')}, instalada el ${textIn(data, 'setOn')}.`,
  }),
  DeterminationOpened: (data) => ({
    en: `Determination opened; information received ${textIn(data, 'receivedOn')}.`,
    es: `Determinación abierta; información recibida el ${textIn(data, 'receivedOn')}.`,
  }),
  InitiallyDetermined: (data) => ({
    en: `Initial determination: ${severitySays(textIn(data, 'severity')).en}, ${textIn(data, 'decidedOn')}.`,
    es: `Determinación inicial: ${severitySays(textIn(data, 'severity')).es}, ${textIn(data, 'decidedOn')}.`,
  }),
  ClassDetermined: (data) => ({
    en: `Class of homes determined ${textIn(data, 'decidedOn')}.`,
    es: `Clase de casas determinada el ${textIn(data, 'decidedOn')}.`,
  }),
  AgencyPositionTaken: (data) => ({
    en: `The inspection agency ${data['concurs'] === true ? 'concurs' : 'disagrees'}: ${textIn(data, 'reference')}.`,
    es: `La agencia de inspección ${data['concurs'] === true ? 'está de acuerdo' : 'no está de acuerdo'}: ${textIn(data, 'reference')}.`,
  }),
  GovernmentNotified: (data) => ({
    en: `HUD, the state agency and the inspection agency notified ${textIn(data, 'notifiedOn')}.`,
    es: `HUD, la agencia estatal y la agencia de inspección avisadas el ${textIn(data, 'notifiedOn')}.`,
  }),
  PlanSubmitted: (data) => ({
    en: `Notification and correction plan submitted ${textIn(data, 'submittedOn')}.`,
    es: `Plan de aviso y corrección presentado el ${textIn(data, 'submittedOn')}.`,
  }),
  PlanApproved: (data) => ({
    en: `Plan approved ${textIn(data, 'approvedOn')}.`,
    es: `Plan aprobado el ${textIn(data, 'approvedOn')}.`,
  }),
  HomeRemedied: (data) => ({
    en: `Home ${textIn(data, 'home')}: ${textIn(data, 'how')} ${textIn(data, 'doneOn')}.`,
    es: `Casa ${textIn(data, 'home')}: ${HOW[textIn(data, 'how')] ?? textIn(data, 'how')} ${textIn(data, 'doneOn')}.`,
  }),
  CompletionReported: (data) => ({
    en: `Completion reported ${textIn(data, 'reportedOn')}.`,
    es: `Cierre informado el ${textIn(data, 'reportedOn')}.`,
  }),
  CountingRuleSet: () => ({
    en: 'How days are counted was set.',
    es: 'Se fijó cómo se cuentan los días.',
  }),
};

const HOW: { readonly [how: string]: string } = {
  notified: 'avisada',
  corrected: 'corregida',
  refused: 'el dueño rechazó la corrección',
};
