import { useState } from 'react';
import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { useSignedIn } from '../../session/session';
import { ChoiceField } from '../../ui/field';
import { useSpeech } from '../../words/words';
import type { Both } from '../../words/words';
import type { Claim } from './claim';
import { TextArea } from './text-area';
import { ToldForm } from './told-form';

type Source = { readonly id: string; readonly name: Both };
type Props = { readonly claim: Claim; readonly sources: readonly Source[]; readonly done: () => void };

type PickProps = {
  readonly name: string;
  readonly chosen: readonly string[];
  readonly from: readonly { readonly id: string; readonly says: string }[];
  readonly change: (chosen: readonly string[]) => void;
};
const Picked = ({ name, chosen, from, change }: PickProps): ReactNode => {
  const { t } = useSpeech();
  return (
    <div className="stack tight">
      <ChoiceField
        name={name}
        value=""
        none={t('complaint.choose')}
        from={from.filter(({ id }) => !chosen.includes(id))}
        change={(id) => id !== '' && change([...chosen, id])}
      />
      <div className="choices">
        {chosen.map((id) => (
          <button
            key={id}
            type="button"
            className="button"
            onClick={() => change(chosen.filter((other) => other !== id))}
          >
            {t('claims.take-off', { what: from.find((one) => one.id === id)?.says ?? id })}
          </button>
        ))}
      </div>
    </div>
  );
};

/** What was seen when it was opened up: it splits causes better than any count. Likely ones stand first. */
export const AsFoundForm = ({ claim, sources, done }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const telling = useTell(done);
  const [pointsTo, setPointsTo] = useState<readonly string[]>([]);
  const [speaksAgainst, setSpeaksAgainst] = useState<readonly string[]>([]);
  const [note, setNote] = useState('');
  const likely = new Set(
    plant.faults
      .filter((fault) => fault.component === claim.component && fault.symptom === claim.symptom)
      .flatMap(({ operations }) => operations),
  );
  const isLikely = ({ id }: Source): number => Number(likely.has(id));
  const from = [...sources]
    .sort((one, other) => isLikely(other) - isLikely(one))
    .map(({ id, name }) => ({ id, says: say(name) }));
  const body = {
    pointsTo: [...pointsTo],
    speaksAgainst: [...speaksAgainst],
    ...(note.trim() === '' ? {} : { note: note.trim() }),
  };
  return (
    <ToldForm
      telling={telling}
      ready={pointsTo.length + speaksAgainst.length > 0 || note.trim() !== ''}
      says={t('claims.record')}
      send={() => void telling.send('asFound', body, { claim: claim.claim })}
    >
      <Picked name={t('claims.points-to')} chosen={pointsTo} from={from} change={setPointsTo} />
      <Picked
        name={t('claims.speaks-against')}
        chosen={speaksAgainst}
        from={from}
        change={setSpeaksAgainst}
      />
      <TextArea name={t('claims.as-found')} value={note} change={setNote} />
    </ToldForm>
  );
};
