import type { ReactNode } from 'react';
import { TableFrame } from '../../ui/table-frame';

export type FigureRow = {
  readonly key: string;
  /** The first names the row; the others are figures. */
  readonly cells: readonly string[];
  /** What stands behind the row; left out: nothing to open. */
  readonly open?: () => void;
};

type Sorting = {
  readonly column: number;
  readonly downwards: boolean;
  readonly by: (column: number) => void;
};

type Props = {
  readonly name: string;
  readonly columns: readonly string[];
  readonly rows: readonly FigureRow[];
  readonly short?: boolean;
  readonly caption?: boolean;
  readonly sorting?: Sorting;
};

const alignedAt = (at: number): string | undefined => (at === 0 ? undefined : 'number');

const Head = ({ columns, sorting }: Pick<Props, 'columns' | 'sorting'>): ReactNode => (
  <thead>
    <tr>
      {columns.map((column, at) => {
        const order = sorting?.downwards === true ? 'descending' : 'ascending';
        const isSorted = sorting?.column === at;
        return (
          <th key={column} scope="col" className={alignedAt(at)} aria-sort={isSorted ? order : undefined}>
            {sorting === undefined ? (
              column
            ) : (
              <button type="button" className="row-button sort" onClick={() => sorting.by(at)}>
                {column}
                <span aria-hidden="true">{isSorted ? (sorting.downwards ? ' ▾' : ' ▴') : ''}</span>
              </button>
            )}
          </th>
        );
      })}
    </tr>
  </thead>
);

/** The table beside a chart: the same figures, each row opening what stands behind it. */
export const FigureTable = ({ name, columns, rows, short, caption, sorting }: Props): ReactNode => (
  <TableFrame name={name} short={short === true}>
    <table className="dense">
      {caption === true && <caption>{name}</caption>}
      <Head columns={columns} sorting={sorting} />
      <tbody>
        {rows.map(({ key, cells: [first, ...rest], open }) => (
          <tr key={key}>
            <th scope="row">
              {open === undefined ? (
                first
              ) : (
                <button type="button" className="row-button" onClick={open}>
                  {first}
                </button>
              )}
            </th>
            {rest.map((cell, at) => (
              <td key={at} className="number">
                {cell}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  </TableFrame>
);
