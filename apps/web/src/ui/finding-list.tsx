import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { useSignedIn } from '../session/session';
import { Mark } from './mark';
import { useSpeech } from '../words/words';
import { SourceSays } from './source-says';

type Finding = AnswerOf<'work'>['findings'][number];
type Props = { readonly findings: readonly Finding[]; readonly act?: (finding: Finding) => ReactNode };

const MARKS = { refuse: 'refused', hold: 'held', note: 'note' } as const;
const GRADES = { refuse: 'grade.refuse', hold: 'grade.hold', note: 'grade.note' } as const;

/** Each finding: how grave in shape and word, the sentence, where it was due, who says so, and what to do. */
export const FindingList = ({ findings, act }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const stationName = (id: string | null): string | null => {
    const station = plant.stations.find((one) => one.id === id);
    return station === undefined ? id : say(station.name);
  };
  return (
    <ul className="findings">
      {findings.map((finding, at) => (
        <li key={at} className="finding">
          <Mark name={MARKS[finding.grade]} size={28} />
          <div className="grow stack tight">
            <p>
              <span className="sr-only">{t(GRADES[finding.grade])}: </span>
              {say(finding.says)}
            </p>
            <div className="row small">
              {finding.station !== null && (
                <span>{t('finding.due-at', { station: stationName(finding.station) ?? '' })}</span>
              )}
              <SourceSays source={finding.source} />
            </div>
            {act?.(finding)}
          </div>
        </li>
      ))}
    </ul>
  );
};
