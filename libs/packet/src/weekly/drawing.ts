import type { Box } from '../report/paper';
import type { Doc } from '../report/sheet';
import { FACE } from '../report/sheet';
import type { WeeklyPoint } from './weekly-report';

const INK = '#1a1a1a';
/** Survives a photocopy beside the ink: it is a whole line, the limits are dashes. */
const BLUE = '#1f5fa8';
const AXIS = 28;
const LABELS = 22;
const MARK = 2.6;
const TEXT = 7;

/** Names of rules for what a point signals; null: nothing. */
export const signalOf = ({ beyond, rules }: WeeklyPoint, beyondSays: string): string | null => {
  if (beyond) return beyondSays;
  return rules.length === 0 ? null : rules.map(({ rule }) => rule).join(' ');
};

type Plot = {
  readonly doc: Doc;
  readonly points: readonly WeeklyPoint[];
  readonly x: (at: number) => number;
  readonly y: (share: number) => number;
  readonly step: number;
};

/** The weekly chart in ink: shapes and strokes tell what colour would, so that a grey copy still reads. */
export const drawWeekly = (doc: Doc, box: Box, points: readonly WeeklyPoint[]): void => {
  const highest = Math.max(
    0.1,
    ...points.flatMap(({ value, upper, interval }) => [value ?? 0, upper ?? 0, interval.high ?? 0]),
  );
  const top = Math.min(1, Math.ceil(highest * 10) / 10);
  const [wide, high] = [box.width - AXIS, box.height - LABELS];
  const step = wide / Math.max(1, points.length);
  const plot: Plot = {
    doc,
    points,
    step,
    x: (at) => box.left + AXIS + (at + 0.5) * step,
    y: (share) => box.top + high - (share / top) * high,
  };
  doc.save();
  doc.font(FACE.plain).fontSize(TEXT).lineWidth(0.4).strokeColor('#999999').fillColor(INK);
  for (const share of [0, top / 2, top]) {
    doc
      .moveTo(box.left + AXIS, plot.y(share))
      .lineTo(box.left + box.width, plot.y(share))
      .stroke();
    doc.text(`${String(Math.round(share * 100))} %`, box.left, plot.y(share) - TEXT / 2, {
      lineBreak: false,
    });
  }
  drawPhases(plot, box.top, box.top + high);
  drawLevels(plot);
  drawValues(plot);
  drawLabels(plot, box.top + high + 4);
  doc.restore();
};

/** Limits are steps: each holds for its own week, and follows how many sections left. */
const drawLevels = ({ doc, points, x, y, step }: Plot): void => {
  points.forEach(({ center, lower, upper }, at) => {
    const [from, to] = [x(at) - step / 2, x(at) + step / 2];
    if (center !== null) {
      doc.lineWidth(1).strokeColor(BLUE).moveTo(from, y(center)).lineTo(to, y(center)).stroke();
    }
    for (const limit of [lower, upper]) {
      if (limit === null || limit === 0) continue;
      doc.lineWidth(0.8).strokeColor(INK).dash(3, { space: 2 });
      doc.moveTo(from, y(limit)).lineTo(to, y(limit)).stroke().undash();
    }
  });
};

const drawPhases = ({ doc, points, x, step }: Plot, top: number, bottom: number): void => {
  points.forEach(({ phase }, at) => {
    if (at === 0 || points[at - 1]?.phase === phase) return;
    doc.lineWidth(1.4).strokeColor(INK);
    doc
      .moveTo(x(at) - step / 2, top)
      .lineTo(x(at) - step / 2, bottom)
      .stroke();
  });
};

const drawValues = ({ doc, points, x, y }: Plot): void => {
  points.forEach((point, at) => {
    const { value, interval } = point;
    if (value === null) return;
    doc.lineWidth(0.6).strokeColor(INK).fillColor(INK);
    if (interval.low !== null && interval.high !== null) {
      doc.moveTo(x(at), y(interval.low)).lineTo(x(at), y(interval.high)).stroke();
    }
    const [cx, cy] = [x(at), y(value)];
    if (signalOf(point, '!') === null) doc.rect(cx - MARK, cy - MARK, 2 * MARK, 2 * MARK).fill();
    else doc.polygon([cx, cy - 6], [cx - 6, cy + 5], [cx + 6, cy + 5]).fill();
  });
};

const drawLabels = ({ doc, points, x, step }: Plot, top: number): void => {
  doc.fillColor(INK).fontSize(TEXT - 1);
  points.forEach(({ from, nonconforming, left }, at) => {
    const place = { width: step, align: 'center' as const, lineBreak: false };
    doc.text(from.slice('2026-'.length), x(at) - step / 2, top, place);
    if (left > 0)
      doc.text(`${String(nonconforming)}/${String(left)}`, x(at) - step / 2, top + TEXT + 1, place);
  });
};
