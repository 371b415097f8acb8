import type { ReactNode } from 'react';
import { useSpeech } from '../../words/words';
import { weeksUpTo } from './span';
import type { Span } from './span';

type Props = { readonly span: Span; readonly answered: Span; readonly change: (span: Span) => void };
const WEEKS = [4, 13, 26, 52] as const;

/** A few usual spans, and any other by its two days. Spans end where the record ends, not today. */
export const SpanPicker = ({ span, answered, change }: Props): ReactNode => {
  const { t } = useSpeech();
  const end = answered.to;
  const isSpan = (other: Span): boolean => span.from === other.from && span.to === other.to;
  return (
    <fieldset className="span-picker no-print">
      <legend className="sr-only">{t('quality.span')}</legend>
      <div className="choices">
        <button
          type="button"
          className="button"
          aria-pressed={span.from === null}
          onClick={() => change({ from: null, to: null })}
        >
          {t('quality.usual')}
        </button>
        {end !== null &&
          WEEKS.map((weeks) => (
            <button
              key={weeks}
              type="button"
              className="button"
              aria-pressed={isSpan(weeksUpTo(end, weeks))}
              onClick={() => change(weeksUpTo(end, weeks))}
            >
              {weeks === 52 ? t('quality.year') : t('quality.weeks', { count: weeks })}
            </button>
          ))}
      </div>
      <div className="span-days">
        <label className="field">
          <span className="field-name">{t('quality.from')}</span>
          <input
            className="input"
            type="date"
            value={answered.from ?? ''}
            max={answered.to ?? undefined}
            onChange={(event) => change({ from: event.target.value, to: answered.to })}
          />
        </label>
        <label className="field">
          <span className="field-name">{t('quality.to')}</span>
          <input
            className="input"
            type="date"
            value={answered.to ?? ''}
            min={answered.from ?? undefined}
            onChange={(event) => change({ from: answered.from, to: event.target.value })}
          />
        </label>
      </div>
    </fieldset>
  );
};
