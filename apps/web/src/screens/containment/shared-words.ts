export const SHARED = ['crew', 'shift', 'lot', 'instrument', 'design', 'span'] as const;
export type Shared = (typeof SHARED)[number];

export const SHARED_WORDS = {
  crew: 'contain.crew',
  shift: 'contain.shift',
  lot: 'contain.lot',
  instrument: 'contain.instrument',
  design: 'contain.design',
  span: 'contain.span',
} as const;
