import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { TextField } from '../../ui/field';
import { useSpeech } from '../../words/words';
import { useBookDay } from './book-day';
import { LinkTrouble } from './link-trouble';
import { SiteStep } from './site-step';
import { useLink } from './use-link';

type Site = AnswerOf<'linkSite'>;

type Props = { readonly site: Site; readonly token: string; readonly again: () => void };

const Steps = ({ site, token, again }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const day = useBookDay();
  const [name, setName] = useState('');
  const done = site.operations.filter((card) => card.done !== null).length;
  return (
    <div className="stack">
      <div>
        <h1>{t('site-link.title', { home: site.home })}</h1>
        <p>
          {site.model} · {t('site-link.sum', { done, of: site.operations.length })}
        </p>
        <p className="quiet">{t('site-link.says')}</p>
      </div>
      <TextField name={t('site-link.name')} value={name} change={setName} />
      <ol className="site-steps">
        {site.operations.map((card) => (
          <SiteStep
            key={card.operation}
            card={card}
            name={name.trim()}
            {...{ token, again, texts: site.texts }}
          />
        ))}
      </ol>
      <p className="quiet small">{t('link.until', { until: day(site.until) })}</p>
      <p className="governing">{say(site.governing)}</p>
    </div>
  );
};

/** The site work of one home, for its installer's phone. */
export const SiteWork = ({ token }: { readonly token: string }): ReactNode => {
  const { answer, trouble, again } = useLink('linkSite', token);
  return (
    <div aria-busy={answer === null && trouble === null}>
      {trouble !== null && <LinkTrouble trouble={trouble} again={again} />}
      {answer !== null && <Steps site={answer} token={token} again={again} />}
    </div>
  );
};
