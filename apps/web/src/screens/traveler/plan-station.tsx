import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';

type Station = AnswerOf<'buildPlan'>['stations'][number];
type Operation = Station['operations'][number];

export const PlanStation = ({ of }: { readonly of: Station }): ReactNode => (
  <ol className="traveler-operations">
    {of.operations.map((operation) => (
      <li key={operation.id}>
        <PlanOperation of={operation} />
      </li>
    ))}
  </ol>
);

/** Its caution first, then what is required, then room for a signature on paper. */
const PlanOperation = ({ of }: { readonly of: Operation }): ReactNode => {
  const { t, say } = useSpeech();
  const also = [
    ...(of.lots.length === 0 ? [] : [`${t('plan.lots')}: ${of.lots.map(say).join(', ')}`]),
    ...of.substitutes.map(({ kind, by }) =>
      t('plan.substitutes', { kind: say(kind), by: by.map(say).join(', ') }),
    ),
    ...(of.instrument === null ? [] : [`${t('plan.instrument')}: ${say(of.instrument)}`]),
    ...(of.photo === 'none' ? [] : [t('plan.photo')]),
    ...(of.manual === null ? [] : [of.manual]),
    ...of.drawings,
  ];
  return (
    <article className="traveler-operation">
      <Mark name={of.done ? 'proven' : 'due'} size={20} />
      <div className="grow">
        {of.caution !== null && (
          <p className="traveler-caution">
            <strong>{t('book.caution')}:</strong> {say(of.caution)}
          </p>
        )}
        <h3>
          {say(of.name)}
          {of.done && <span className="quiet small"> · {t('plan.done')}</span>}
        </h3>
        <p className="quiet small">
          {t('plan.crew')}: {say(of.crew)}
          {also.length > 0 && ` · ${also.join(' · ')}`}
        </p>
        <ul>
          {of.values.map((value) => (
            <li key={value.characteristic}>
              {say(value.label)}: <strong>{say(value.requires)}</strong>
            </li>
          ))}
        </ul>
      </div>
      <p className="traveler-signed small">{t('plan.signed')}</p>
    </article>
  );
};
