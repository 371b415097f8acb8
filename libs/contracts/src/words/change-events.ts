import { listIn, textIn } from './event-data';
import type { EventData } from './event-data';
import type { Names } from './names';
import type { Sayings } from './saying';
import { isData } from './event-data';
import type { Words } from '@libs/judge';

/** What changed for a home that was ordered or built already, and what people may sign for. */
export const changeEvents: Sayings = {
  OrderChanged: (data) => {
    const [due, notDue, findings] = ['due', 'notDue', 'findings'].map((field) => listIn(data, field).length);
    return {
      en: `The order changed: newly due ${due}, no longer due ${notDue}, not accepted of what is on record ${findings}.`,
      es: `Cambió el pedido: nuevos ${due}, ya no pedidos ${notDue}, no aceptados de lo registrado ${findings}.`,
    };
  },
  DeviationApproved: (data, names) =>
    deviationSays(isData(data['deviation']) ? data['deviation'] : {}, names),
  PersonQualified: (data) => {
    const until = typeof data['until'] === 'string' ? data['until'] : null;
    return until === null
      ? { en: 'Somebody may sign for more.', es: 'Alguien puede firmar por más.' }
      : {
          en: `Somebody may sign for more, until ${until}.`,
          es: `Alguien puede firmar por más, hasta el ${until}.`,
        };
  },
  QualificationEnded: () => ({
    en: 'What somebody could sign for ended.',
    es: 'Terminó lo que alguien podía firmar.',
  }),
};

const deviationSays = (deviation: EventData, names: Names): Words => {
  const { en, es } = names.operation(textIn(deviation, 'operation'));
  const reference = textIn(deviation, 'reference');
  return {
    en: `A deviation was approved for this home, of “${en}” (${reference}).`,
    es: `Se aprobó una desviación para esta casa, de “${es}” (${reference}).`,
  };
};
