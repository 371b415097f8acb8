import type { PacketEvent, PacketHome } from '@libs/packet';
import type { Words } from '@libs/judge';
import type { Asked } from '../questions/asked';
import { GOVERNING } from '../questions/governing';
import { historyQuestion } from '../questions/history';
import { subjectOf } from '../questions/subject';
import { plantQuestion } from '../questions/plant';

/**
 * What a packet of this home is made of, up to a position of the ledger. Undefined: nobody knows a home or a section
 * of that serial.
 */
export const packetHomeOf =
  (asked: Asked) =>
  async (serial: string, at: number): Promise<PacketHome | undefined> => {
    const [history, subject] = await Promise.all([historyQuestion(asked)(serial), subjectOf(serial, asked)]);
    if (history === undefined || subject === undefined) return undefined;

    const streams = [
      `home/${history.home}`,
      ...history.sections.map((section) => `section/${section.serial}`),
    ];
    const stored = (await asked.ledger.ofStreams(streams)).filter(({ position }) => position <= at);
    const entries = new Map(history.entries.map((entry) => [entry.position, entry]));
    const order = new Map(history.entries.map(({ position }, n) => [position, n]));
    const events = stored.flatMap((event): readonly PacketEvent[] => {
      const entry = entries.get(event.position);
      if (entry === undefined) return [];
      const { id, type, says, by, findings, note, correctedBy } = entry;
      const known = correctedBy.filter((position) => position <= at);
      return [
        {
          event,
          id,
          type,
          serial: entry.serial,
          says,
          by,
          findings,
          note,
          correctedBy: known,
        },
      ];
    });
    const { name, zone, ledger } = await plantQuestion(asked)();
    const names = asked.names.current();
    return {
      home: history.home,
      model: history.model,
      plant: { name, zone, ledger },
      design: { ...subject.home.design },
      sections: history.sections,
      events: events.sort((a, b) => (order.get(a.event.position) ?? 0) - (order.get(b.event.position) ?? 0)),
      names: {
        station: (id): Words => names.station(id),
        operation: (id): Words => names.operation(id),
        characteristic: (operation, id): Words => names.characteristic(operation, id),
        place: (id): Words => names.place(id),
      },
      position: at,
      asOf: stored.at(-1)?.recordedAt ?? new Date(0).toISOString(),
      governing: GOVERNING,
    };
  };
