import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type PDFDocument from 'pdfkit';

export type Doc = InstanceType<typeof PDFDocument>;

/** Points. Letter paper with margins that a hole punch leaves alone. */
export const MARGIN = 54;
export const FOOT = 40;
export const BODY = 10;
export const SMALL = 8.5;
export const GAP = 6;

const FILES = join(
  dirname(createRequire(__filename).resolve('@fontsource/atkinson-hyperlegible/package.json')),
  'files',
);
const face = (weight: 400 | 700): string => join(FILES, `atkinson-hyperlegible-latin-${weight}-normal.woff`);
/** By their files, not by registered names: a second name for one file would be opened and unpacked at each use. */
export const FACE = { plain: face(400), bold: face(700) } as const;

export const width = (doc: Doc): number => doc.page.width - 2 * MARGIN;

/** One element of the structure, with what it draws. */
export const write = (doc: Doc, tag: string, draw: () => void): void => {
  const element = doc.struct(tag, {}, draw);
  doc.addStructure(element);
  element.end();
};
