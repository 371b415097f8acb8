/** One all-day event of a calendar feed. */
export type DueDay = {
  readonly uid: string;
  readonly day: string;
  readonly summary: string;
  readonly about: string;
  readonly warnDays: number;
};

const CRLF = '\r\n';
/** RFC 5545, 3.1: no line is longer than 75 octets; it goes on after a line break and a space. */
const LINE_OCTETS = 75;

/** iCalendar (RFC 5545): days that are due, each with an alarm ahead. */
export const calendarOf = (days: readonly DueDay[], nowMs: number): string =>
  [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Studbook//Due days//EN',
    'CALSCALE:GREGORIAN',
    ...days.flatMap((one) => eventLines(one, nowMs)),
    'END:VCALENDAR',
    '',
  ]
    .map(folded)
    .join(CRLF);

const eventLines = ({ uid, day, summary, about, warnDays }: DueDay, nowMs: number): readonly string[] => [
  'BEGIN:VEVENT',
  `UID:${text(uid)}`,
  `DTSTAMP:${new Date(nowMs).toISOString().replace(/[-:]|\.\d{3}/g, '')}`,
  `DTSTART;VALUE=DATE:${day.replaceAll('-', '')}`,
  `SUMMARY:${text(summary)}`,
  `DESCRIPTION:${text(about)}`,
  'TRANSP:TRANSPARENT',
  'BEGIN:VALARM',
  'ACTION:DISPLAY',
  `DESCRIPTION:${text(summary)}`,
  `TRIGGER:-P${warnDays}D`,
  'END:VALARM',
  'END:VEVENT',
];

/** RFC 5545, 3.3.11. */
const text = (value: string): string =>
  value.replace(/[\\;,]/g, (mark) => `\\${mark}`).replace(/\r?\n/g, '\\n');

const folded = (line: string): string => {
  const lines: string[] = [];
  let rest = '';
  for (const letter of line) {
    const most = lines.length === 0 ? LINE_OCTETS : LINE_OCTETS - 1;
    if (Buffer.byteLength(rest + letter) > most) {
      lines.push(rest);
      rest = '';
    }
    rest += letter;
  }
  return [...lines, rest].join(`${CRLF} `);
};
