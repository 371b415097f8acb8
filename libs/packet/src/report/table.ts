import { FACE, GAP, MARGIN, SMALL, width } from './sheet';
import type { Doc } from './sheet';

export type Column = {
  readonly title: string;
  /** Share of the width. */
  readonly share: number;
};

/** Points around a cell's text. */
const CELL = 4;

type Drawn = {
  readonly doc: Doc;
  readonly columns: readonly Column[];
  readonly table: PDFKit.PDFStructureElement;
};

/** Flows over pages; its heading stands on each. */
export const drawTable = (
  doc: Doc,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
): void => {
  const table = doc.struct('Table');
  doc.addStructure(table);
  const drawn = { doc, columns, table };
  const titles = columns.map(({ title }) => title);
  drawRow(drawn, titles, true);
  for (const row of rows) {
    if (doc.y + heightOf(drawn, row) > doc.page.maxY()) {
      doc.addPage();
      drawRow(drawn, titles, true);
    }
    drawRow(drawn, row, false);
  }
  table.end();
  doc.x = MARGIN;
  doc.y += GAP * 2;
};

const widthsOf = ({ doc, columns }: Drawn): readonly number[] => {
  const all = columns.reduce((sum, { share }) => sum + share, 0);
  return columns.map(({ share }) => (share / all) * width(doc));
};

const heightOf = (drawn: Drawn, row: readonly string[]): number => {
  drawn.doc.font(FACE.plain).fontSize(SMALL);
  const heights = widthsOf(drawn).map((wide, n) =>
    drawn.doc.heightOfString(row[n] ?? '', { width: wide - CELL * 2 }),
  );
  return Math.max(...heights) + CELL * 2;
};

const drawRow = (drawn: Drawn, row: readonly string[], head: boolean): void => {
  const { doc, table } = drawn;
  const top = doc.y;
  const height = heightOf(drawn, row);
  const element = doc.struct('TR');
  table.add(element);
  let x = MARGIN;
  for (const [n, wide] of widthsOf(drawn).entries()) {
    const left = x;
    const cell = doc.struct(head ? 'TH' : 'TD', {}, () => {
      doc.font(head ? FACE.bold : FACE.plain).fontSize(SMALL);
      doc.text(row[n] ?? '', left + CELL, top + CELL, { width: wide - CELL * 2 });
    });
    element.add(cell);
    cell.end();
    x += wide;
  }
  element.end();
  doc.markContent('Artifact', { type: 'Layout' });
  doc
    .lineWidth(head ? 1 : 0.5)
    .moveTo(MARGIN, top + height)
    .lineTo(MARGIN + width(doc), top + height)
    .stroke();
  doc.endMarkedContent();
  doc.y = top + height;
};
