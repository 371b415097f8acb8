import type { Words } from '@libs/judge';
import type { PacketHome } from '../packet-home';

/** One thing that belongs into a home's file, and which events say it is here. */
type FileItem = { readonly says: Words; readonly in: RegExp | null };

/**
 * What 24 CFR 3282.417(e) wants in the file of each home. Correspondence, cards and orders are kept elsewhere by a plant
 * until it records them here; the report then says so, rather than leave the reader to notice.
 */
const HOME_FILE: readonly FileItem[] = [
  { says: { en: 'Copy of the data plate', es: 'Copia de la placa de datos' }, in: /^DataPlate/ },
  {
    says: {
      en: 'Information on manufacture, handling and assembly',
      es: 'Información de fabricación, manejo y armado',
    },
    in: /^(Work|Test|Station|Section)/,
  },
  { says: { en: 'Transport checklist', es: 'Lista de revisión de transporte' }, in: /^Transport/ },
  { says: { en: 'Name and address of the retailer', es: 'Nombre y dirección del vendedor' }, in: null },
  { says: { en: 'Registration of the purchaser', es: 'Registro del comprador' }, in: null },
  { says: { en: 'Correspondence', es: 'Correspondencia' }, in: null },
  {
    says: { en: 'Set-up information', es: 'Información de la instalación en el sitio' },
    in: /^(Site|SetUp)/,
  },
  { says: { en: 'Service work orders', es: 'Órdenes de servicio' }, in: /^Service/ },
  {
    says: { en: 'Determinations, notices and corrections', es: 'Determinaciones, avisos y correcciones' },
    in: /^(Claim|Determination|Notice)/,
  },
];

export const homeFileOf = ({
  events,
}: PacketHome): readonly { readonly says: Words; readonly count: number }[] =>
  HOME_FILE.map(({ says, in: kind }) => ({
    says,
    count: kind === null ? 0 : events.filter(({ type }) => kind.test(type)).length,
  }));
