import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { useSpeech } from '../words/words';

type Source = AnswerOf<'work'>['findings'][number]['source'];

const KINDS = {
  published: 'source.published',
  practice: 'source.practice',
  memory: 'source.memory',
  design: 'source.design',
  derived: 'source.derived',
} as const;

/** On whose authority: folded away until someone wants to know. */
export const SourceSays = ({
  source,
  open = false,
}: {
  readonly source: Source;
  readonly open?: boolean;
}): ReactNode => {
  const { t } = useSpeech();
  const says = (
    <>
      {t(KINDS[source.kind])}
      {source.kind !== 'practice' && source.reference !== '' && `: ${source.reference}`}{' '}
      {source.row !== '' && <span className="mono small">({source.row})</span>}
    </>
  );
  if (open) return <span className="quiet small">{says}</span>;
  return (
    <details className="source">
      <summary>{t('source')}</summary>
      <p className="small">{says}</p>
    </details>
  );
};
