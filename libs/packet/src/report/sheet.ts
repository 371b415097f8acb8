import type PDFDocument from 'pdfkit';

export type Doc = InstanceType<typeof PDFDocument>;

/** Points. Letter paper with margins that a hole punch leaves alone. */
export const MARGIN = 54;
export const FOOT = 40;
export const BODY = 10;
export const SMALL = 8.5;
export const GAP = 6;

export const width = (doc: Doc): number => doc.page.width - 2 * MARGIN;

/** One element of the structure, with what it draws. */
export const write = (doc: Doc, tag: string, draw: () => void): void => {
  const element = doc.struct(tag, {}, draw);
  doc.addStructure(element);
  element.end();
};
