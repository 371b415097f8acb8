import type { ReactNode } from 'react';
import { TroubleNotice } from '../../ui/trouble';
import type { Telling } from './use-telling';

type Props = {
  readonly telling: Telling;
  readonly action: string;
  readonly ready?: boolean;
  readonly children?: ReactNode;
};

/** The end of every form: what the record said, and the one button that sends it, in reach of a thumb. */
export const FormFoot = ({ telling, action, ready = true, children }: Props): ReactNode => (
  <>
    {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
    {children}
    <div className="form-foot">
      <button type="submit" className="button primary big" disabled={telling.busy || !ready}>
        {action}
      </button>
    </div>
  </>
);
