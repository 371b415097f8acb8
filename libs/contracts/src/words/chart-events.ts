import { textIn } from './event-data';
import type { Sayings } from './saying';

/** What people say of charts. */
export const chartEvents: Sayings = {
  ChartAnnotated: (data, names) => {
    const [station, day] = [names.station(textIn(data, 'station')), textIn(data, 'day')];
    return {
      en: `Chart of ${station.en}: a note on ${day}.`,
      es: `Gráfica de ${station.es}: una nota del ${day}.`,
    };
  },
  BaselineSet: (data, names) => {
    const station = names.station(textIn(data, 'station'));
    const [from, to] = [textIn(data, 'from'), textIn(data, 'to')];
    return {
      en: `Chart of ${station.en}: limits come from ${from} to ${to}.`,
      es: `Gráfica de ${station.es}: los límites salen del ${from} al ${to}.`,
    };
  },
  SignalAcknowledged: (data, names) => {
    const [station, day] = [names.station(textIn(data, 'station')), textIn(data, 'day')];
    return {
      en: `Signal of ${day} at ${station.en} looked into.`,
      es: `Señal del ${day} en ${station.es}: se buscó la causa.`,
    };
  },
  AlarmBudgetSet: (data) => {
    const budget = textIn(data, 'falseAlarmsPerMonth');
    return {
      en: `The charts may give ${budget} false alarms a month, all together.`,
      es: `Las gráficas pueden dar ${budget} falsas alarmas al mes, todas juntas.`,
    };
  },
  DefectCostsSet: (data) => {
    const currency = textIn(data, 'currency');
    return {
      en: `What defects cost the plant was set, in ${currency}.`,
      es: `Se fijó lo que los defectos le cuestan a la planta, en ${currency}.`,
    };
  },
};
