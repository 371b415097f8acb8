import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { useSignedIn } from '../../session/session';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';
import { StandingBlock } from './standing-block';

type Standing = AnswerOf<'line'>['sections'][number];
type Station = AnswerOf<'plant'>['stations'][number];

const LANES: Readonly<Record<string, WordKey>> = {
  top: 'lane.top',
  sides: 'lane.sides',
  inside: 'lane.inside',
  under: 'lane.under',
};

/** Where crews stand, drawn on a section's end: over it, beside it, in it, under it. */
const Lanes = ({ lanes }: { readonly lanes: readonly string[] }): ReactNode => {
  const { t } = useSpeech();
  if (lanes.length === 0) return null;
  const has = (lane: string): boolean => lanes.includes(lane);
  return (
    <p className="lanes">
      <svg width="32" height="24" viewBox="0 0 32 24" aria-hidden="true" focusable="false">
        <path d="M6 20V8l10-5 10 5v12z" fill="none" stroke="currentColor" strokeWidth="1" />
        {has('top') && <path d="M4 7l12-6 12 6" className="lane-line" />}
        {has('sides') && <path d="M3 9v11M29 9v11" className="lane-line" />}
        {has('inside') && <path d="M11 14h10" className="lane-line" />}
        {has('under') && <path d="M5 23h22" className="lane-line" />}
      </svg>
      {lanes.map((lane) => (LANES[lane] === undefined ? lane : t(LANES[lane]))).join(' · ')}
    </p>
  );
};

const Bay = ({
  station,
  sections,
}: {
  readonly station: Station;
  readonly sections: readonly Standing[];
}): ReactNode => {
  const { t, say } = useSpeech();
  return (
    <li className={sections.length === 0 ? 'bay free' : 'bay'}>
      <div className="bay-head">
        {station.pos !== null && <span className="bay-number mono">{station.pos}</span>}
        <h3>{say(station.name)}</h3>
        <Lanes lanes={station.lanes} />
      </div>
      {sections.length === 0 && station.kind === 'line' && <p className="bay-free">{t('line.empty')}</p>}
      <ul className="bay-sections">
        {sections.map((section) => (
          <StandingBlock key={section.serial} section={section} />
        ))}
      </ul>
    </li>
  );
};

/** The line as a plan: bays in order, sections as they stand in them, a dashed outline where one is awaited. */
export const LinePlan = ({ sections }: { readonly sections: readonly Standing[] }): ReactNode => {
  const { t } = useSpeech();
  const { plant } = useSignedIn();
  const line = plant.stations
    .filter(({ kind }) => kind === 'line')
    .sort((one, other) => (one.pos ?? 0) - (other.pos ?? 0));
  const onLine = sections.filter(({ stage }) => stage === 'on-line');
  const at = (station: Station): readonly Standing[] =>
    onLine.filter((section) => section.station === station.id);
  const elsewhere = plant.stations.filter(
    (station) => station.kind !== 'line' && station.kind !== 'shop' && at(station).length > 0,
  );
  const pulled = sections.filter(({ stage }) => stage === 'pulled');
  return (
    <>
      <ol className="plan">
        {line.map((station) => (
          <Bay key={station.id} station={station} sections={at(station)} />
        ))}
      </ol>
      {(pulled.length > 0 || elsewhere.length > 0) && (
        <section aria-labelledby="off-line" className="off-line">
          <h2 id="off-line">{t('line.off-line')}</h2>
          <ul className="yard">
            {[...pulled, ...elsewhere.flatMap(at)].map((section) => (
              <StandingBlock key={section.serial} section={section} away />
            ))}
          </ul>
        </section>
      )}
    </>
  );
};
