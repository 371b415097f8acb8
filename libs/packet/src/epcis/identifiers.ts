/**
 * Identifiers without a GS1 prefix: private HTTPS URIs, which CBV 2.0 (8.2.3) allows. They lie below the reserved
 * `.invalid` name of RFC 2606 until a plant names a domain of its own, so that nobody takes them for somebody's.
 */
export type Identifiers = {
  readonly home: (serial: string) => string;
  readonly section: (serial: string) => string;
  readonly lot: (lot: string) => string;
  readonly instrument: (instrument: string) => string;
  readonly station: (station: string) => string;
  readonly plant: string;
  readonly document: (kind: string, number: string) => string;
  readonly vocabulary: string;
};

export const identifiersUnder = (base: string): Identifiers => {
  const at =
    (folder: string) =>
    (id: string): string =>
      `${base}/${folder}/${encodeURIComponent(id)}`;
  return {
    home: at('obj/home'),
    section: at('obj/section'),
    lot: at('class/lot'),
    instrument: at('obj/instrument'),
    station: at('loc/station'),
    plant: `${base}/loc/plant`,
    document: (kind, number) => at(`doc/${kind}`)(number),
    vocabulary: `${base}/voc/`,
  };
};

export const PLANT_BASE = 'https://plant.invalid/id';
