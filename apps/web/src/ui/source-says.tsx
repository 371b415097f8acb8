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

/** What a rulebook writes where the kind of source has said it all. */
const PLAIN: ReadonlySet<string> = new Set(['design', 'approved design']);

/** On whose authority: folded away until someone wants to know. */
export const SourceSays = ({ source }: { readonly source: Source }): ReactNode => {
  const { t } = useSpeech();
  const isNamed = source.kind !== 'practice' && source.reference !== '' && !PLAIN.has(source.reference);
  return (
    <details className="source">
      <summary>{t('source')}</summary>
      <p className="small">
        {t(KINDS[source.kind])}
        {isNamed && `: ${source.reference}`}{' '}
        {source.row !== '' && <span className="mono small">({source.row})</span>}
      </p>
    </details>
  );
};
