import { useEffect, useRef } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { Mark } from '../../ui/mark';
import { Serial } from '../../ui/serial';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { TableFrame } from '../../ui/table-frame';
import { useSpeech } from '../../words/words';
import type { Chosen } from './filter';
import type { Span } from './span';

export const WHICH = ['left', 'nonconforming', 'escaped', 'incomplete'] as const;
export type Which = (typeof WHICH)[number];
export type PassagesBehind = {
  readonly station: string;
  readonly name: string;
  readonly which: Which;
  readonly span: Span;
  /** Only some of the sections; left out: all. */
  readonly filter?: Chosen;
};

const TITLES = {
  left: 'behind.left',
  nonconforming: 'behind.nonconforming',
  escaped: 'behind.escaped',
  incomplete: 'behind.incomplete',
} as const;
const WORDS = {
  left: 'behind.which.left',
  nonconforming: 'behind.which.nonconforming',
  escaped: 'behind.which.escaped',
  incomplete: 'behind.which.incomplete',
} as const;

type FrameProps = { readonly title: string; readonly close: () => void; readonly children: ReactNode };
/** Opens under the chart it belongs to, and takes the focus there. */
export const BehindFrame = ({ title, close, children }: FrameProps): ReactNode => {
  const { t } = useSpeech();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus();
    heading.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  return (
    <section className="behind stack tight">
      <div className="row spread">
        <h3 ref={heading} tabIndex={-1}>
          {title}
        </h3>
        <button type="button" className="button" onClick={close}>
          {t('behind.close')}
        </button>
      </div>
      {children}
    </section>
  );
};

type Props = { readonly behind: PassagesBehind; readonly change: (behind: PassagesBehind | null) => void };

const Passages = ({ behind }: { readonly behind: PassagesBehind }): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const { answer, trouble, again } = useQuestion('passages', {
    station: behind.station,
    which: behind.which,
    ...behind.span,
    ...behind.filter,
  });
  if (trouble !== null) return <TroubleNotice trouble={trouble} again={again} />;
  return (
    <TableFrame name={behind.name}>
      <table>
        <caption>
          {answer !== null &&
            t('behind.title', {
              count: answer.passages.length,
              what: t(TITLES[behind.which], { station: behind.name }),
            })}
        </caption>
        <thead>
          <tr>
            <th scope="col">{t('line.column.serial')}</th>
            <th scope="col">{t('behind.left-at')}</th>
            <th scope="col">{t('yield.seen')}</th>
            <th scope="col">{t('yield.escapes')}</th>
            <th scope="col">{t('yield.complete')}</th>
            <th scope="col" className="number">
              {t('behind.found')}
            </th>
          </tr>
        </thead>
        <tbody>
          {answer?.passages.map((passage) => (
            <tr key={`${passage.serial}/${passage.enteredAt}`}>
              <td>
                <Link to={places.home(passage.serial)}>
                  <Serial of={passage.serial} />
                </Link>
              </td>
              <td>{passage.leftAt === null ? t('behind.still') : times.moment(passage.leftAt)}</td>
              {[passage.clean, passage.cleanWithEscapes, passage.complete].map((good, at) => (
                <td key={at}>
                  <span className="block-note">
                    <Mark name={good ? 'proven' : 'refused'} size={20} /> {t(good ? 'yes' : 'no')}
                  </span>
                </td>
              ))}
              <td className="number">{passage.nonconformances}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
};

/** The sections a figure was counted from. */
export const PassagesBehindFigure = ({ behind, change }: Props): ReactNode => {
  const { t } = useSpeech();
  return (
    <BehindFrame title={behind.name} close={() => change(null)}>
      <div className="choices" role="group" aria-label={t('behind.which')}>
        {WHICH.map((which) => (
          <button
            key={which}
            type="button"
            className="button"
            aria-pressed={behind.which === which}
            onClick={() => change({ ...behind, which })}
          >
            {t(WORDS[which])}
          </button>
        ))}
      </div>
      <Passages behind={behind} />
    </BehindFrame>
  );
};
