import type { PacketEvent, PacketFile, PacketHome } from '../packet-home';

/** IEEE 1849-2016 (XES), with its extensions concept, lifecycle, organizational and time: a trace a section. */
export const xesFile = (home: PacketHome): PacketFile => ({
  name: 'history.xes',
  bytes: Buffer.from(xesOf(home), 'utf8'),
});

const EXTENSIONS = [
  ['Concept', 'concept', 'http://www.xes-standard.org/concept.xesext'],
  ['Lifecycle', 'lifecycle', 'http://www.xes-standard.org/lifecycle.xesext'],
  ['Organizational', 'org', 'http://www.xes-standard.org/org.xesext'],
  ['Time', 'time', 'http://www.xes-standard.org/time.xesext'],
] as const;

const xesOf = (home: PacketHome): string => {
  const serials = [...new Set([...home.sections.map(({ serial }) => serial), ...home.events.map(serialIn)])];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<log xes.version="1849-2016" xes.features="nested-attributes" xmlns="http://www.xes-standard.org/">',
    ...EXTENSIONS.map(
      ([name, prefix, uri]) => `  <extension name="${name}" prefix="${prefix}" uri="${uri}"/>`,
    ),
    '  <global scope="trace">',
    '    <string key="concept:name" value="unknown"/>',
    '  </global>',
    '  <global scope="event">',
    '    <string key="concept:name" value="unknown"/>',
    '    <date key="time:timestamp" value="1970-01-01T00:00:00.000+00:00"/>',
    '    <string key="lifecycle:transition" value="complete"/>',
    '  </global>',
    '  <classifier name="Operation" keys="concept:name"/>',
    `  ${text('concept:name', home.home)}`,
    ...serials.flatMap((serial) => traceOf(serial, home)),
    '</log>',
    '',
  ].join('\n');
};

const serialIn = ({ serial }: PacketEvent): string => serial;

const traceOf = (serial: string, { home, events }: PacketHome): readonly string[] => {
  const own = events.filter((event) => event.serial === serial);
  if (own.length === 0) return [];
  return [
    '  <trace>',
    `    ${text('concept:name', serial)}`,
    `    ${text('studbook:home', home)}`,
    ...own.flatMap(eventOf),
    '  </trace>',
  ];
};

/** A log of operations calls them by the work itself; what is no work carries its event's name. */
const eventOf = ({ event, type, by, id }: PacketEvent): readonly string[] => {
  const operation =
    type === 'WorkRecorded' || type === 'TestRecorded' ? textIn(event.data['operation']) : null;
  const crew = textIn(event.data['crew']);
  return [
    '    <event>',
    `      ${text('concept:name', operation ?? type)}`,
    `      <date key="time:timestamp" value="${escaped(event.occurredAt)}"/>`,
    `      ${text('lifecycle:transition', TRANSITION[type] ?? (operation === null ? 'unknown' : 'complete'))}`,
    `      ${text('org:resource', by)}`,
    ...(crew === null ? [] : [`      ${text('org:group', crew)}`]),
    ...(event.station === null ? [] : [`      ${text('studbook:station', event.station)}`]),
    `      ${text('studbook:event', type)}`,
    `      <int key="studbook:position" value="${event.position}"/>`,
    `      <id key="identity:id" value="${id}"/>`,
    '    </event>',
  ];
};

/** The standard lifecycle's own words where one fits; `unknown` is one of them. */
const TRANSITION: { readonly [type: string]: string } = {
  SectionStarted: 'start',
  SectionPulled: 'suspend',
  SectionReturned: 'resume',
  HoldPlaced: 'suspend',
  HoldReleased: 'resume',
  WorkWithdrawn: 'withdraw',
  AskingCleared: 'schedule',
};

const textIn = (value: unknown): string | null => (typeof value === 'string' ? value : null);
const text = (key: string, value: string): string => `<string key="${key}" value="${escaped(value)}"/>`;

/** XML 1.0 has no place for most control characters, not even as references: they become the replacement character. */
const escaped = (value: string): string =>
  value
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '\ufffd')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replace(/[\t\r\n]/g, (character) => `&#${character.charCodeAt(0)};`);
