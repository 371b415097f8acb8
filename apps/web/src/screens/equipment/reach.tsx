import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { Serial } from '../../ui/serial';
import { TableFrame } from '../../ui/table-frame';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';

type Row = AnswerOf<'lotReach'>['builtInto'][number];

const Rows = ({ rows, name }: { readonly rows: readonly Row[]; readonly name: string }): ReactNode => {
  const { t, say } = useSpeech();
  const times = useTimes();
  if (rows.length === 0) return <p>{t('equipment.none')}</p>;
  return (
    <TableFrame name={name}>
      <table>
        <thead>
          <tr>
            <th scope="col">{t('equipment.section')}</th>
            <th scope="col">{t('equipment.operation')}</th>
            <th scope="col">{t('equipment.at')}</th>
            <th scope="col">{t('equipment.label')}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={`${row.serial} ${row.operation} ${row.at}`}>
              <th scope="row">
                <Link to={places.home(row.home)}>
                  <Serial of={row.serial} />
                </Link>
              </th>
              <td>{say(row.operationName)}</td>
              <td className="mono">{row.at === '' ? '' : times.day(row.at)}</td>
              <td className="mono">{row.label ?? ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
};

/** Every section a lot is built into, those that have left included. */
export const LotReach = ({ lot }: { readonly lot: string }): ReactNode => {
  const { t } = useSpeech();
  const { answer, trouble } = useQuestion('lotReach', { lot });
  if (trouble !== null) return <TroubleNotice trouble={trouble} />;
  if (answer === null) return null;
  const name = t('equipment.built-into', { lot });
  return (
    <>
      <h2>{name}</h2>
      <Rows rows={answer.builtInto} name={name} />
    </>
  );
};

/** Every section a gauge measured since it was last found good. */
export const InstrumentReach = ({ instrument }: { readonly instrument: string }): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const { answer, trouble } = useQuestion('instrumentReach', { instrument });
  if (trouble !== null) return <TroubleNotice trouble={trouble} />;
  if (answer === null) return null;
  const name = t('equipment.measured-by', { instrument });
  return (
    <>
      <h2>{name}</h2>
      <p>
        {answer.goodOn === null
          ? t('equipment.never-good')
          : t('equipment.good-on', { day: times.day(answer.goodOn) })}{' '}
        {answer.foundOn !== null && t('equipment.found-on', { day: times.day(answer.foundOn) })}
      </p>
      <Rows rows={answer.tested} name={name} />
    </>
  );
};
