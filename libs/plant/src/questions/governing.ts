import type { Words } from '@libs/judge';

/** Stands wherever a limit is shown. */
export const GOVERNING: Words = {
  en: 'Follow the approved design, the quality assurance manual, the inspection agencies and local codes; this record does not replace them.',
  es: 'Siga el diseño aprobado, el manual de aseguramiento de calidad, a las agencias de inspección y los códigos locales; este registro no los sustituye.',
};
