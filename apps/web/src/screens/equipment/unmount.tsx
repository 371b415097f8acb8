import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { mayTell } from '../../session/may';
import { useSignedIn } from '../../session/session';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';

type Row = AnswerOf<'equipment'>['lots'][number];

/** A lot that is used up, or was opened at the wrong station: nothing worked there from now on inherits it. */
export const Unmount = ({ row, again }: { readonly row: Row; readonly again: () => void }): ReactNode => {
  const { t, say } = useSpeech();
  const { me } = useSignedIn();
  const telling = useTell(again);
  if (!mayTell(me)) return null;
  return (
    <>
      {row.mountedAt.map(({ station, name }) => (
        <button
          key={station}
          type="button"
          className="button no-print"
          disabled={telling.busy}
          onClick={() => void telling.send('unmounting', { station, lot: row.lot })}
        >
          {t('equipment.unmount', { station: say(name) })}
        </button>
      ))}
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
    </>
  );
};
