import type { ReactNode, SyntheticEvent } from 'react';
import { inchesAsFraction } from '@libs/kernel';
import { useSpeech } from '../../words/words';
import type { Card } from './cards';
import { useDraft } from './drafts';
import { ExceptPlaces } from './except-places';
import { FormFoot } from './form-foot';
import { PanelHead } from './panel-head';
import { ReasonChoice } from './reason-choice';
import { useTelling } from './use-telling';
import { ValueEntry } from './value-entry';
import { isInches } from '../../ui/metric';
import { isTyped, sentValues, tallyOf } from './values';
import type { Typed } from './values';
import { useWork } from './work-context';

const typedBefore = (card: Card): Typed =>
  Object.fromEntries(
    (card.done?.values ?? []).map(({ characteristic, value, unit }) => [
      characteristic,
      isInches(unit) ? inchesAsFraction(value) : value,
    ]),
  );

type CorrectDraft = {
  readonly typed: Typed;
  readonly except: readonly string[];
  readonly reason: string;
};

/** Values written down wrong: the new ones stand, the old ones stay in sight, struck through. */
export const CorrectForm = ({ card }: { readonly card: Card }): ReactNode => {
  const { t, say } = useSpeech();
  const { section, station, close, told } = useWork();
  const telling = useTelling();
  const { draft, change, forget } = useDraft<CorrectDraft>(`${section.serial}/${card.operation}/correct`, {
    typed: typedBefore(card),
    except: card.except,
    reason: '',
  });
  const { typed, except, reason } = draft;
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const values = sentValues(card, typed);
    const body = {
      serial: section.serial,
      operation: card.operation,
      except: [...except],
      values,
      reason,
      station: station.id,
    };
    const result = await telling.send('correction', body);
    if (result !== 'turned-down') forget();
    told(result, t('told.corrected', { work: say(card.name) }));
  };
  return (
    <form className="panel-form stack" onSubmit={(event) => void submit(event)}>
      <PanelHead title={t('correct.title', { work: say(card.name) })} close={close} />
      <p>{t('correct.says')}</p>
      {card.values.filter(isTyped).map((asked) => (
        <ValueEntry
          key={asked.characteristic}
          asked={asked}
          typed={typed[asked.characteristic] ?? ''}
          change={(text) => change({ typed: { ...typed, [asked.characteristic]: text } })}
        />
      ))}
      <ExceptPlaces except={except} change={(next) => change({ except: next })} />
      <ReasonChoice use="correction" reason={reason} change={(next) => change({ reason: next })} />
      <FormFoot
        telling={telling}
        action={t('correct.send')}
        ready={reason !== '' && tallyOf([card], () => typed).unreadable === 0}
      />
    </form>
  );
};
