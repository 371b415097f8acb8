import type { ReactNode } from 'react';
import type { Tell } from '../../api/use-tell';
import { TroubleNotice } from '../../ui/trouble';

type Props = {
  readonly telling: Pick<Tell, 'busy' | 'trouble'>;
  readonly ready: boolean;
  readonly says: string;
  readonly send: () => void;
  readonly children: ReactNode;
};

/** A form of the desk: its fields, why it was not taken, and the one thing it does. */
export const ToldForm = ({ telling, ready, says, send, children }: Props): ReactNode => (
  <form
    className="office-form"
    onSubmit={(event) => {
      event.preventDefault();
      send();
    }}
  >
    {children}
    {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
    <div>
      <button type="submit" className="button primary" disabled={telling.busy || !ready}>
        {says}
      </button>
    </div>
  </form>
);
