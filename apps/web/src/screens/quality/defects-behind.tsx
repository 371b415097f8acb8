import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import type { Wanted } from '../../api/paths';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { Serial } from '../../ui/serial';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { TableFrame } from '../../ui/table-frame';
import { useSpeech } from '../../words/words';
import { BehindFrame } from './behind';
import type { Span } from './span';

export type DefectsBehind = {
  readonly by: 'code' | 'component' | 'symptom' | 'station' | 'operation' | 'crew' | 'lot';
  readonly key: string;
  readonly class: string;
  readonly says: string;
  /** Charged to this station alone; null: to any. */
  readonly station: string | null;
  readonly span: Span;
};

const STATES = { open: 'defect.open', reworked: 'defect.reworked', closed: 'defect.closed' } as const;

const wantedOf = ({ by, key, class: kind, station, span }: DefectsBehind): Wanted => {
  const [component, symptom] = key.split(' ');
  const which = by === 'code' ? { component, symptom } : { [by]: key };
  return { class: kind, ...(station === null ? {} : { station }), ...which, ...span };
};

/** The sections behind a bar, one row a defect. */
export const DefectsBehindFigure = ({
  behind,
  close,
}: {
  readonly behind: DefectsBehind;
  readonly close: () => void;
}): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const times = useTimes();
  const { answer, trouble, again } = useQuestion('defects', wantedOf(behind));
  const defects = answer?.defects ?? [];
  const stationName = (id: string | null): string => {
    const station = plant.stations.find((one) => one.id === id);
    return station === undefined ? (id ?? '–') : say(station.name);
  };
  return (
    <BehindFrame title={t('behind.defects', { count: defects.length, what: behind.says })} close={close}>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      <TableFrame name={behind.says}>
        <table>
          <thead>
            <tr>
              <th scope="col">{t('line.column.serial')}</th>
              <th scope="col">{t('pareto.by.code')}</th>
              <th scope="col">{t('pareto.by.station')}</th>
              <th scope="col">{t('behind.when')}</th>
              <th scope="col">{t('behind.state')}</th>
            </tr>
          </thead>
          <tbody>
            {defects.map((defect) => (
              <tr key={defect.defect}>
                <td>
                  <Link to={places.home(defect.serial)}>
                    <Serial of={defect.serial} />
                  </Link>
                </td>
                <td>{say(defect.says)}</td>
                <td>{stationName(defect.charged)}</td>
                <td>{times.moment(defect.occurredAt)}</td>
                <td>{t(STATES[defect.state])}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </BehindFrame>
  );
};
