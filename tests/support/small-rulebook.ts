import type { CompiledPlan, Design } from '@libs/judge';
import type { Rulebook, RulebookFiles, RulebookProblem } from '@libs/rulebook';
import { readRulebook, resolvePlan } from '@libs/rulebook';
import { createHash } from 'node:crypto';

/** The smallest rulebook that has one of everything, for tests that change one thing about it. */
export const SMALL: RulebookFiles = {
  'plant.yaml': `name: Small works
zone: America/Chicago
enforced: true
stations:
  - { id: floor, pos: 1, kind: line, en: Floor, es: Piso, facts: [wind], lots: [cable] }
  - { id: shop, pos: null, kind: shop, en: Shop, es: Taller }
  - { id: walls, pos: 2, kind: line, en: Walls, es: Paredes }
  - { id: final, pos: 3, kind: line, en: Final, es: Final }
  - { id: site, pos: null, kind: site, en: Site, es: Sitio }
crews:
  - { id: walls, en: Walls, es: Paredes }
  - { id: quality, en: Quality, es: Calidad }
places:
  - { id: kitchen, en: kitchen, es: cocina }
reasons:
  - { id: look-again, en: look again, es: revisar, for: [hold] }
details:
  - { id: nails, en: nails, es: clavos }
attributes:
  - id: role
    en: half
    es: mitad
    scope: section
    values: [{ value: wet, en: wet, es: húmeda }, { value: dry, en: dry, es: seca }]
  - id: wind
    en: wind
    es: viento
    values: [{ value: I, en: I, es: I }, { value: II, en: II, es: II }, { value: III, en: III, es: III }]
  - id: sections
    en: sections
    es: secciones
    numeric: true
    values: [{ value: '1', en: one, es: una }, { value: '2', en: two, es: dos }]
`,
  'operations.yaml': `- id: framed
  en: Framed
  es: Armada
  station: shop
  crew: walls
  entry: S
- id: wired
  en: Wired
  es: Cableada
  station: floor
  crew: walls
  entry: V
  lots: [cable]
- id: piped
  en: Piped
  es: Tubería
  station: floor
  crew: walls
  entry: S
  when: { role: '"wet"' }
- id: boarded
  en: Boarded
  es: Tablaroca
  station: walls
  crew: walls
  entry: S
  hard: [framed]
  soft: [wired]
- id: gassed
  en: Gas tested
  es: Gas probado
  station: walls
  crew: quality
  entry: T
  instrument: gauge
  signers: ['crew:quality', 'role:quality-manager']
- id: finished
  en: Finished
  es: Terminada
  station: final
  crew: quality
  entry: I
  hard: [all-due]
  gate: true
- id: joined
  en: Joined
  es: Unida
  station: site
  crew: quality
  entry: S
  scope: home
  when: { sections: '>= 2' }
  hard: [boarded]
`,
  'covers.csv': `cover,hides,hidden,other_face,grade,source_kind,source
boarded,wired,any,-,refuse,published,NEC 300.4
boarded,piped,any,-,refuse,practice,practice
`,
  'values.csv': `operation,characteristic,en,es,kind,unit,required,as_design,relation,choices,grade,from,lot_kind,asked,worst_of,source_kind,source,on,wind
wired,edge,Edge,Orilla,measure,[in_i],>= 1.25,-,-,-,hold,entry,-,always,1,published,NEC,yes,-
wired,spacing,Spacing,Separación,measure,[in_i],<= 24,-,-,-,hold,entry,-,always,1,practice,practice,yes,-
wired,spacing,Spacing,Separación,measure,[in_i],<= 16,-,-,-,hold,entry,-,always,1,published,3280.305,yes,"""III"""
wired,nails,Nails,Clavos,count,1,-,nails,-,-,hold,entry,-,always,5,design,design,yes,"""II"",""III"""
gassed,start,Start,Inicio,measure,[psi],>= 3,-,-,-,hold,entry,-,always,1,published,3280.705,yes,-
gassed,end,End,Final,measure,[psi],-,-,-,-,hold,entry,-,always,1,published,3280.705,yes,-
gassed,drop,Drop,Caída,derived,[psi],-,-,start - end = 0,-,refuse,entry,-,always,1,published,3280.705,yes,-
gassed,odor,Odor,Olor,yes-no,-,"""no""",-,-,-,hold,entry,-,always,1,memory,from memory,no,-
`,
  'components.csv': 'id,en,es\nwire,Wire,Cable\n',
  'symptoms.csv': 'id,en,es\npierced,pierced,perforado\n',
  'faults.csv':
    'component,symptom,causes,elsewhere,caught_by\nwire,pierced,boarded:b wired:a,x-use:c,finished\n',
  'lots.csv': 'kind,en,es,traced\ncable,Cable,Cable,no\n',
  'instruments.csv': 'kind,en,es,calibrated\ngauge,Gauge,Manómetro,yes\n',
};

export const DESIGN: Design = { role: 'wet', wind: 'I', sections: '2', nails: '>= 7' };

/** The small rulebook with one text in one file put in place of another: the change must be possible. */
export const changed = (
  file: string,
  from: string,
  to: string,
  files: RulebookFiles = SMALL,
): RulebookFiles => {
  const text = files[file] ?? '';
  if (!text.includes(from)) throw new Error(`${file} has no \`${from}\``);
  return { ...files, [file]: text.replace(from, () => to) };
};

export const read = (files: RulebookFiles = SMALL): Rulebook => {
  const answer = readRulebook(files);
  if (answer.ok) return answer.rulebook;
  throw new Error(answer.problems.map(({ file, row, says }) => `${file}:${row} ${says}`).join('\n'));
};

export const problemsOf = (files: RulebookFiles): readonly RulebookProblem[] => {
  const answer = readRulebook(files);
  return answer.ok ? [] : answer.problems;
};

export const sha256Hex = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

export const resolved = (files: RulebookFiles = SMALL, design: Design = DESIGN): CompiledPlan => {
  const answer = resolvePlan(read(files), 1, design, sha256Hex);
  if (answer.ok) return answer.plan;
  throw new Error(answer.problems.map(({ column, says }) => `${column ?? ''} ${says}`).join('\n'));
};
