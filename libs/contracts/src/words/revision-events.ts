import { listIn, textIn } from './event-data';
import type { Sayings } from './saying';

/** A revision on its way, and a unit that is judged by another one from here on. */
export const revisionEvents: Sayings = {
  RevisionProposed: () => ({
    en: 'A revision of the rulebook was handed in for approval.',
    es: 'Se entregó una revisión del reglamento para su aprobación.',
  }),
  ProposalReturned: (data) =>
    textIn(data, 'how') === 'withdrawn'
      ? { en: 'The proposed revision was taken back.', es: 'Se retiró la revisión propuesta.' }
      : { en: 'The proposed revision was sent back.', es: 'Se devolvió la revisión propuesta.' },
  RevisionApplied: (data) => {
    const [from, to] = [textIn(data, 'from'), textIn(data, 'to')];
    const [due, changed, findings] = ['due', 'changed', 'findings'].map(
      (field) => listIn(data, field).length,
    );
    return {
      en: `From here on judged by revision ${to} in place of ${from}: newly due ${due}, changed ${changed}, not accepted of what is on record ${findings}.`,
      es: `Desde aquí se juzga por la revisión ${to} en lugar de la ${from}: nuevos ${due}, cambiados ${changed}, no aceptados de lo registrado ${findings}.`,
    };
  },
};
