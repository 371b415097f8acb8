import type { RecordedValue } from '@libs/judge';
import { measureUnit } from '@libs/kernel';
import type { PacketEvent, PacketHome } from '../packet-home';
import { homeFileOf } from './home-file';
import type { Paper } from './paper';
import type { ReportLanguage, ReportWords } from './words';

export type Reporting = {
  readonly paper: Paper;
  readonly home: PacketHome;
  readonly words: ReportWords;
  readonly language: ReportLanguage;
};

const minute = ({ event }: PacketEvent): string => event.occurredAt.slice(0, 16).replace('T', ' ');

/** Page one answers what an auditor asks first: what it is, what failed, what is not here. */
export const cover = ({ paper, home, words, language }: Reporting): void => {
  paper.heading(1, words.title(home.home));
  paper.text(`${home.plant.name} · ${words.model} ${home.model}`, { bold: true });
  paper.text(words.position(home.position));
  paper.heading(2, words.whatItIs);
  paper.table(
    [words.section, words.role, words.stage, words.label].map((title) => ({ title, share: 1 })),
    home.sections.map(({ serial, role, stage, label }) => [
      serial,
      role ?? '–',
      stage,
      label ?? words.noLabel,
    ]),
  );
  failures({ paper, home, words, language });
  paper.heading(2, words.whatIsMissing);
  paper.text(words.missingSays);
  paper.list(
    homeFileOf(home).map(
      ({ says, count }) => `${says[language]}: ${count === 0 ? words.notHere : words.here(count)}`,
    ),
  );
};

const defectIn = ({ event }: PacketEvent): string | null =>
  typeof event.data['defect'] === 'string' ? event.data['defect'] : null;

/** What ends a defect, as events are named; the last one tells how. */
const ENDS = /^(DefectVerified|DefectClosed|DefectDispositioned|WorkWithdrawn)$/;

const failures = ({ paper, home, words, language }: Reporting): void => {
  paper.heading(2, words.whatFailed);
  const failed = home.events.filter(
    ({ type, event }) => type === 'DefectRecorded' && event.data['class'] === 'nonconformance',
  );
  if (failed.length === 0) {
    paper.text(words.nothingFailed);
    return;
  }
  paper.table(
    [
      { title: words.when, share: 2 },
      { title: words.section, share: 2 },
      { title: words.what, share: 4 },
      { title: words.how, share: 4 },
    ],
    failed.map((one) => {
      const end = home.events
        .filter(({ type }) => ENDS.test(type))
        .findLast((other) => defectIn(other) === defectIn(one));
      const how = end === undefined ? words.stillOpen : `${end.says[language]} (${minute(end)}, ${end.by})`;
      return [minute(one), one.serial, one.says[language], how];
    }),
  );
};

const isWork = ({ type }: PacketEvent): boolean =>
  type === 'WorkRecorded' || type === 'TestRecorded' || type === 'WorkCorrected';

export const asBuilt = ({ paper, home, words, language }: Reporting): void => {
  paper.newPage();
  paper.heading(1, words.asBuilt);
  paper.text(home.governing[language], { small: true });
  for (const { serial } of [...home.sections, { serial: home.home }]) {
    const done = home.events.filter((event) => event.serial === serial && isWork(event));
    if (done.length === 0) continue;
    paper.heading(2, serial);
    for (const station of new Set(done.map(({ event }) => event.station))) {
      paper.heading(3, station === null ? words.elsewhere : home.names.station(station)[language]);
      paper.table(
        [
          { title: words.when, share: 2 },
          { title: words.work, share: 3 },
          { title: words.values, share: 4 },
          { title: words.who, share: 2 },
          { title: words.proof, share: 2 },
        ],
        done
          .filter(({ event }) => event.station === station)
          .map((one) => workRow(one, { paper, home, words, language })),
      );
    }
  }
};

const workRow = (one: PacketEvent, { home, words, language }: Reporting): readonly string[] => {
  const { data } = one.event;
  const operation = typeof data['operation'] === 'string' ? data['operation'] : '';
  const mended = one.correctedBy.length === 0 ? '' : ` (#${one.correctedBy.join(', #')})`;
  return [
    minute(one),
    `${home.names.operation(operation)[language]}${mended}`,
    valuesIn(data['values'])
      .map((value) => valueSays(value, operation, { home, language }))
      .join('; '),
    one.by,
    proofSays(data['proof'], words),
  ];
};

const proofSays = (proof: unknown, { proofKinds }: ReportWords): string =>
  proof === 'seen' || proof === 'reconstructed' ? proofKinds[proof] : proofKinds.signed;

const valueSays = (
  { characteristic, value, unit, place }: RecordedValue,
  operation: string,
  { home: { names }, language }: Pick<Reporting, 'home' | 'language'>,
): string => {
  const where = place === undefined ? '' : ` (${names.place(place)[language]})`;
  const symbol = unit === null ? '' : (measureUnit(unit)?.symbol ?? unit);
  return `${names.characteristic(operation, characteristic)[language]}${where}: ${`${value} ${symbol}`.trim()}`;
};

/** Values stand in the ledger as they were checked on their way in. */
const valuesIn = (values: unknown): readonly RecordedValue[] =>
  Array.isArray(values) ? (values as readonly RecordedValue[]) : [];

const WHAT = ({ words }: Reporting): readonly { title: string; share: number }[] => [
  { title: words.when, share: 2 },
  { title: words.section, share: 2 },
  { title: words.what, share: 6 },
  { title: words.who, share: 2 },
];

const told = (reporting: Reporting, chosen: readonly PacketEvent[]): void =>
  reporting.paper.table(
    WHAT(reporting),
    chosen.map((one) => [minute(one), one.serial, one.says[reporting.language], one.by]),
  );

export const corrections = (reporting: Reporting): void => {
  const { paper, home, words } = reporting;
  paper.heading(1, words.corrections);
  const mends = home.events.filter(({ event }) => event.corrects !== undefined);
  if (mends.length === 0) paper.text(words.noCorrections);
  else told(reporting, mends);

  paper.heading(1, words.refused);
  const refused = home.events.filter(({ type }) => type === 'AskingRefused');
  if (refused.length === 0) paper.text(words.noRefused);
  else told(reporting, refused);
};

/** Everything else that happened, so that the paper leaves no event out. */
export const everything = (reporting: Reporting): void => {
  const { paper, home, words, language } = reporting;
  paper.heading(1, words.findings);
  paper.table(
    [
      { title: '#', share: 1 },
      { title: words.when, share: 2 },
      { title: words.section, share: 2 },
      { title: words.what, share: 7 },
      { title: words.who, share: 2 },
    ],
    home.events.map((one) => [
      String(one.event.position),
      minute(one),
      one.serial,
      [one.says[language], ...one.findings.map(({ says }) => says[language])].join('\n'),
      one.by,
    ]),
  );
};

export const signatures = ({ paper, home, words }: Reporting): void => {
  const counts = new Map<string, number>();
  for (const { by } of home.events) counts.set(by, (counts.get(by) ?? 0) + 1);
  paper.heading(1, words.signatures);
  paper.table(
    [
      { title: words.who, share: 3 },
      { title: words.entries, share: 1 },
    ],
    [...counts].sort(([a], [b]) => (a < b ? -1 : 1)).map(([by, count]) => [by, String(count)]),
  );
};

export const proofs = ({ paper, words }: Reporting, lines: readonly string[]): void => {
  paper.heading(1, words.proofs);
  for (const line of words.proofsSay) paper.text(line);
  for (const line of lines) paper.text(line, { small: true });
};
