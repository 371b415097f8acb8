import type { ReactNode } from 'react';
import type { Trouble } from '../api/client';
import { useSpeech } from '../words/words';
import type { WordKey } from '../words/words';
import { Mark } from './mark';

/** Where the code has no words of ours; what has none of either is shown as the server put it. */
const BY_STATUS: Readonly<Record<number, WordKey>> = {
  401: 'problem.signed-out',
  403: 'problem.role-missing',
  404: 'problem.not-known',
  429: 'problem.too-many',
  500: 'problem.server',
};

export const TroubleSays = ({ trouble }: { readonly trouble: Trouble }): ReactNode => {
  const { t, knows } = useSpeech();
  if (trouble.kind === 'unreachable')
    return t(trouble.elsewhere === true ? 'problem.writer-elsewhere' : 'problem.unreachable');
  const byCode = `problem.${trouble.code ?? ''}`;
  const key = knows(byCode) ? byCode : BY_STATUS[trouble.status];
  if (key !== undefined) return t(key);
  return (
    <span lang="en">
      {trouble.says}
      {trouble.errors.map((error) => ` ${error.pointer}: ${error.detail}`).join(';')}
    </span>
  );
};

type Props = {
  readonly trouble: Trouble;
  readonly again?: (() => void) | undefined;
  readonly children?: ReactNode;
};

/** Why nothing is shown here, and the way on. */
export const TroubleNotice = ({ trouble, again, children }: Props): ReactNode => {
  const { t } = useSpeech();
  return (
    <div className="notice refused" role="alert">
      <Mark name="refused" size={32} />
      <div className="grow stack tight">
        <p>
          <TroubleSays trouble={trouble} />
        </p>
        {children}
        {again !== undefined && (
          <div>
            <button type="button" className="button" onClick={again}>
              {t('again')}
            </button>
          </div>
        )}
      </div>
    </div>
  );
};
