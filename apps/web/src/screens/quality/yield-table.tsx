import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { useSpeech } from '../../words/words';
import type { Which } from './behind';
import { FigureTable } from './figure-table';
import { useFigures } from './use-figures';

export type Yield = AnswerOf<'yield'>;
export type YieldRow = Yield['rows'][number];

const COLUMNS = [
  'yield.station',
  'yield.seen',
  'yield.interval',
  'yield.escapes',
  'yield.complete',
  'yield.mended',
  'yield.dpu',
  'yield.lost',
] as const;

const VERDICTS = {
  better: 'against.better',
  worse: 'against.worse',
  'not-told-apart': 'against.alike',
} as const;

/** What a column is sorted by; null stands last whichever way. The first keeps the order of the line. */
const SORTED_BY: readonly ((row: YieldRow) => number | null)[] = [
  () => 0,
  ({ firstPass }) => firstPass,
  ({ firstPassInterval }) => firstPassInterval.low,
  ({ firstPassWithEscapes }) => firstPassWithEscapes,
  ({ completeShare }) => completeShare,
  ({ mendedBeforeLeaving }) => mendedBeforeLeaving,
  ({ nonconformances, left }) => (left === 0 ? null : nonconformances / left),
  ({ lossShare }) => lossShare,
  ({ against }) => against?.firstPass ?? null,
];

const sorted = (
  rows: readonly YieldRow[],
  { column, downwards }: { readonly column: number; readonly downwards: boolean },
): readonly YieldRow[] => {
  const by = SORTED_BY[column] ?? (() => 0);
  const sign = downwards ? -1 : 1;
  if (column === 0) return downwards ? rows.toReversed() : rows;
  return rows.toSorted((a, b) => {
    const [one, other] = [by(a), by(b)];
    if (one === null || other === null) return Number(one === null) - Number(other === null);
    return sign * (one - other);
  });
};

/** The names of the columns and the cells of a row, for the table and for its file. */
export const useYieldFigures = (answer: Yield) => {
  const { t, say, locale } = useSpeech();
  const figures = useFigures();
  const two = new Intl.NumberFormat(locale, { minimumFractionDigits: 2, maximumFractionDigits: 2 });
  const against = (row: YieldRow): string =>
    row.against === null || row.against.left === 0
      ? t('yield.nothing-left')
      : [
          figures.percent(row.against.firstPass),
          figures.of(row.against.clean, row.against.left),
          t(VERDICTS[row.against.now]),
        ].join(' · ');
  const cells = (row: YieldRow): readonly string[] => [
    say(row.name),
    ...(row.left === 0
      ? [t('yield.nothing-left'), '', '', '', '', '', '']
      : [
          `${figures.percent(row.firstPass)} · ${figures.of(row.clean, row.left)}`,
          figures.range(row.firstPassInterval),
          `${figures.percent(row.firstPassWithEscapes)} · ${figures.of(row.cleanWithEscapes, row.left)}`,
          `${figures.percent(row.completeShare)} · ${figures.of(row.complete, row.left)}`,
          String(row.mendedBeforeLeaving),
          two.format(row.nonconformances / row.left),
          figures.percent(row.lossShare),
        ]),
    ...(answer.against === null ? [] : [against(row)]),
  ];
  const columns = [
    ...COLUMNS.map((column) => t(column)),
    ...(answer.against === null
      ? []
      : [
          t('against.column', {
            from: figures.day(answer.against.from),
            to: figures.day(answer.against.to),
          }),
        ]),
  ];
  return { columns, cells };
};

type Props = { readonly answer: Yield; readonly open: (row: YieldRow, which: Which) => void };

/** In line order, or by any figure: a second touch turns it round. */
export const YieldTable = ({ answer, open }: Props): ReactNode => {
  const { t } = useSpeech();
  const { columns, cells } = useYieldFigures(answer);
  const [order, setOrder] = useState({ column: 0, downwards: false });
  const by = (column: number): void =>
    setOrder((before) => ({ column, downwards: before.column === column && !before.downwards }));
  return (
    <FigureTable
      name={t('yield.table')}
      caption
      columns={columns}
      sorting={{ ...order, by }}
      rows={sorted(answer.rows, order).map((row) => ({
        key: row.station,
        cells: cells(row),
        open: () => open(row, row.clean < row.left ? 'nonconforming' : 'left'),
      }))}
    />
  );
};
