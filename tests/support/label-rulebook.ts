import type { RulebookFiles } from '@libs/rulebook';

/** As little of a line as a label needs: wiring with cable, boards over it, a test, and the label. */
export const LABEL_RULEBOOK: RulebookFiles = {
  'plant.yaml': `
name: Label plant
zone: America/Chicago
enforced: true
stations:
  - { id: rough-in, pos: 1, kind: line, en: Rough-in, es: Instalaciones, lots: [cable] }
  - { id: drywall, pos: 2, kind: line, en: Drywall, es: Tablaroca }
  - { id: final, pos: 3, kind: line, en: Final, es: Final }
crews:
  - { id: electrical, en: Electrical, es: Electricidad }
  - { id: drywall, en: Drywall, es: Tablaroca }
  - { id: quality, en: Quality, es: Calidad }
places:
  - { id: kitchen, en: kitchen, es: cocina }
  - { id: bath, en: bath, es: baño }
reasons:
  - { id: look-again, en: look again, es: revisar otra vez, for: [hold] }
  - { id: suspect-lot, en: suspect lot, es: lote dudoso, for: [hold] }
  - { id: damaged, en: damaged, es: dañada, for: [correction] }
details: []
attributes:
  - id: wind
    en: wind zone
    es: zona de viento
    values: [{ value: I, en: wind zone I, es: zona de viento I }]
plate:
  - { id: serial, en: Serial number, es: Número de serie, from: serial }
  - { id: made, en: Date of manufacture, es: Fecha de fabricación, from: made }
  - { id: labels, en: Labels, es: Etiquetas, from: labels }
  - { id: wind, en: Wind zone, es: Zona de viento, from: design, of: [wind] }
  - { id: agency, en: Design approval by, es: Diseño aprobado por, from: text, text: { en: Invented, es: Inventada } }
`,
  'operations.yaml': `
- { id: wired, en: Wired, es: Cableada, station: rough-in, crew: electrical, entry: S, lots: [cable] }
- { id: boarded, en: Boarded, es: Tablaroca puesta, station: drywall, crew: drywall, entry: S, hard: [wired], hard_source: practice }
- { id: proved, en: Proved, es: Probada, station: final, crew: quality, entry: T, hard: [wired], hard_source: practice }
- { id: labelled, en: Labelled, es: Etiquetada, station: final, crew: quality, entry: I, label: true, gate: true, hard: [wired, boarded, proved], hard_source: practice }
`,
  'covers.csv':
    'cover,hides,hidden,other_face,grade,source_kind,source\nboarded,wired,any,-,refuse,practice,-\n',
  'values.csv':
    'operation,characteristic,en,es,kind,unit,required,as_design,relation,choices,grade,from,lot_kind,asked,worst_of,source_kind,source,on\n',
  'components.csv': 'id,en,es\nbranch-wire,Branch wire,Cable de circuito\n',
  'symptoms.csv': 'id,en,es\npierced,pierced,perforado\n',
  'faults.csv':
    'component,symptom,causes,elsewhere,caught_by\nbranch-wire,pierced,boarded:a wired:b,-,proved\n',
  'lots.csv': 'kind,en,es,traced\ncable,cable,cable,no\n',
  'instruments.csv': 'kind,en,es,calibrated\n',
};
