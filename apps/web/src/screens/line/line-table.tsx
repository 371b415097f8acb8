import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { useNow } from '../../ui/now';
import { Serial } from '../../ui/serial';
import { useTimes } from '../../words/use-times';
import { TableFrame } from '../../ui/table-frame';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';
import { defectsOf } from './standing-block';

type Standing = AnswerOf<'line'>['sections'][number];
const COLUMNS: readonly WordKey[] = [
  'line.column.station',
  'line.column.serial',
  'line.column.home',
  'line.column.since',
  'line.column.held',
  'line.column.open',
  'line.column.defects',
  'line.column.last',
];

/** The station's name; off the line, why. */
const useWhere = ({ station, stage, pulledFor }: Standing): string => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const at = plant.stations.find(({ id }) => id === station);
  if (stage !== 'pulled') return at === undefined ? t('line.off-line') : say(at.name);
  return pulledFor ? `${t('line.off-line')}: ${say(pulledFor)}` : t('line.off-line');
};

const Row = ({ section }: { readonly section: Standing }): ReactNode => {
  const { t, say } = useSpeech();
  const times = useTimes();
  const now = useNow();
  const where = useWhere(section);
  return (
    <tr>
      <td data-column={t('line.column.station')}>{where}</td>
      <td data-column={t('line.column.serial')}>
        <Link
          to={
            section.station === null
              ? places.home(section.serial)
              : places.sectionAt(section.station, section.serial)
          }
        >
          <Serial of={section.serial} />
        </Link>
      </td>
      <td data-column={t('line.column.home')}>
        <Link to={places.home(section.home)}>{section.model}</Link>
      </td>
      <td data-column={t('line.column.since')}>
        {section.since === null ? '' : times.since(section.since, now)}
      </td>
      <td data-column={t('line.column.held')}>
        {section.heldBy !== null && (
          <span className="block-hold">
            <Mark name="held" size={20} /> <span>{say(section.heldBy)}</span>
          </span>
        )}
      </td>
      <td className="number" data-column={t('line.column.open')}>
        {section.openWork}
      </td>
      <td className="number" data-column={t('line.column.defects')}>
        {defectsOf(section)}
      </td>
      <td data-column={t('line.column.last')}>
        <span>
          {say(section.lastSays)} <span className="quiet small">{times.moment(section.lastAt)}</span>
        </span>
      </td>
    </tr>
  );
};

/** The same line as rows, in the order of the stations. */
export const LineTable = ({ sections }: { readonly sections: readonly Standing[] }): ReactNode => {
  const { t } = useSpeech();
  const { plant } = useSignedIn();
  const placeOf = ({ station, stage }: Standing): number => {
    const pos = plant.stations.find(({ id }) => id === station)?.pos ?? null;
    return stage === 'pulled' || pos === null ? Infinity : pos;
  };
  const inOrder = [...sections].sort(
    (one, other) => placeOf(one) - placeOf(other) || one.serial.localeCompare(other.serial),
  );
  return (
    <TableFrame name={t('nav.line')}>
      <table className="stacked">
        <thead>
          <tr>
            {COLUMNS.map((column) => (
              <th
                key={column}
                scope="col"
                className={
                  column === 'line.column.open' || column === 'line.column.defects' ? 'number' : undefined
                }
              >
                {t(column)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {inOrder.map((section) => (
            <Row key={section.serial} section={section} />
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
};
