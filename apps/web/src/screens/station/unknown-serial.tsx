import { withoutCheck } from '@libs/kernel';
import { useEffect } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { Link, swapTo } from '../../router/router';
import { meantBy, surelyMeantBy } from '../../scan/serials';
import { Mark } from '../../ui/mark';
import { Serial } from '../../ui/serial';
import { useSpeech } from '../../words/words';

/** The last characters tell halves and neighbours apart, and survive most slips in the rest. */
const TAIL = 4;
/** More to choose from is no help. */
const MOST = 6;

type Props = { readonly typed: string; readonly station: string; readonly onLine: readonly string[] };

/** Nobody started this serial here; perhaps an O was read for a 0. */
export const UnknownSerial = ({ typed, station, onLine }: Props): ReactNode => {
  const { t } = useSpeech();
  const homes = useQuestion('homes', { search: typed.slice(-TAIL) });
  // A check character at the end is of no serial: without it the tail is one's own.
  const unchecked = withoutCheck(typed);
  const checked = useQuestion('homes', unchecked === undefined ? null : { search: unchecked.slice(-TAIL) });
  const exactly = useQuestion('homes', { search: typed });
  const found = [homes, checked].flatMap(
    ({ answer }) => answer?.homes.flatMap(({ sections }) => sections) ?? [],
  );
  const known = [...new Set([...onLine, ...found])];
  const near = meantBy(typed, known);
  // What no serial is like may be the number of a label: that search knows those too.
  const labelled = near.length > 0 ? [] : (exactly.answer?.homes.flatMap(({ sections }) => sections) ?? []);
  const meant = [...near, ...labelled].slice(0, MOST);
  const [only] = labelled.length === 1 ? labelled : [];
  const sure = surelyMeantBy(typed, known) ?? only;
  useEffect(() => {
    if (sure !== undefined) swapTo(places.sectionAt(station, sure));
  }, [sure, station]);
  return (
    <section className="stack" role="alert">
      <div className="notice refused">
        <Mark name="refused" size={32} />
        <div className="grow">
          <p>
            {t('unknown.says')} <Serial of={typed} />
          </p>
          <p>{t(meant.length > 0 ? 'unknown.meant' : 'unknown.nothing-like-it')}</p>
        </div>
      </div>
      <ul className="standing">
        {meant.map((serial) => (
          <li key={serial}>
            <Link className="standing-link" to={places.sectionAt(station, serial)}>
              <Serial of={serial} />
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
};
