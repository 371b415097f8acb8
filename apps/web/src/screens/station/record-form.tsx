import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { mayDecide, isQualityManager, useSignedIn } from '../../session/session';
import type { Me } from '../../session/session';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import type { Card } from './cards';
import { useDraft } from './drafts';
import { ExceptPlaces } from './except-places';
import { FormFoot } from './form-foot';
import { PanelHead } from './panel-head';
import { PhotoEntry } from '../../ui/photo-entry';
import { ScannedField } from './scanned-field';
import { TallySays } from './tally-says';
import { useTelling } from './use-telling';
import { ValueEntry } from './value-entry';
import { isTyped, sentValues, tallyOf } from './values';
import type { Typed } from './values';
import { useWork } from './work-context';

type Proof = 'signed' | 'seen' | 'reconstructed';
type RecordDraft = {
  readonly typed: Typed;
  readonly except: readonly string[];
  readonly proof: Proof;
  readonly photos: readonly string[];
  readonly instrument: string;
  readonly station: string;
  readonly note: string;
};

const PROOF_WORDS = {
  signed: 'proof.signed',
  seen: 'proof.seen',
  reconstructed: 'proof.reconstructed',
} as const;
const proofsFor = (me: Me, card: Card): readonly Proof[] => {
  if (!mayDecide(me) || card.entry === 'I' || card.entry === 'T') return ['signed'];
  return isQualityManager(me) ? ['signed', 'seen', 'reconstructed'] : ['signed', 'seen'];
};

type PartProps = {
  readonly card: Card;
  readonly draft: RecordDraft;
  readonly change: (part: Partial<RecordDraft>) => void;
};

const ProofChoice = ({ card, draft, change }: PartProps): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSignedIn();
  const proofs = proofsFor(me, card);
  if (proofs.length === 1) return null;
  return (
    <fieldset className="stack tight">
      <legend className="field-name">{t('proof')}</legend>
      <div className="choices">
        {proofs.map((proof) => (
          <button
            key={proof}
            type="button"
            className="button choice"
            aria-pressed={draft.proof === proof}
            onClick={() => change({ proof })}
          >
            {t(PROOF_WORDS[proof])}
          </button>
        ))}
      </div>
    </fieldset>
  );
};

const Where = ({ draft, change }: PartProps): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  return (
    <label className="field">
      <span className="field-name">{t('record.where')}</span>
      <select
        className="input"
        value={draft.station}
        onChange={(event) => change({ station: event.target.value })}
      >
        {plant.stations.map((station) => (
          <option key={station.id} value={station.id}>
            {say(station.name)}
          </option>
        ))}
      </select>
    </label>
  );
};

const Values = ({ card, draft, change }: PartProps): ReactNode =>
  card.values
    .filter(isTyped)
    .map((asked) => (
      <ValueEntry
        key={asked.characteristic}
        asked={asked}
        typed={draft.typed[asked.characteristic] ?? ''}
        change={(typed) => change({ typed: { ...draft.typed, [asked.characteristic]: typed } })}
      />
    ));

const More = (props: PartProps): ReactNode => {
  const { t } = useSpeech();
  const { card, draft, change } = props;
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="button" aria-expanded={open} onClick={() => setOpen(!open)}>
        {t('record.more')}
      </button>
      {open && (
        <>
          <Where {...props} />
          {card.photo === 'none' && draft.proof === 'signed' && (
            <PhotoEntry photos={draft.photos} needed={false} change={(photos) => change({ photos })} />
          )}
          <label className="field">
            <span className="field-name">{t('note')}</span>
            <textarea
              className="input"
              rows={2}
              maxLength={2000}
              value={draft.note}
              onChange={(event) => change({ note: event.target.value })}
            />
          </label>
        </>
      )}
    </>
  );
};

export const Caution = ({ card }: { readonly card: Card }): ReactNode => {
  const { t, say } = useSpeech();
  return (
    <>
      {card.caution !== null && (
        <p className="notice due">
          <Mark name="note" size={32} />
          <span className="grow">
            <strong>{t('caution')}</strong> {say(card.caution)}
          </span>
        </p>
      )}
      {card.builtBy !== undefined && <p className="quiet">{card.builtBy}</p>}
    </>
  );
};

const bodyOf = (card: Card, draft: RecordDraft, serial: string) => ({
  serial,
  operation: card.operation,
  proof: draft.proof,
  except: [...draft.except],
  values: sentValues(card, draft.typed),
  photos: [...draft.photos],
  instrument: draft.instrument.trim() === '' ? null : draft.instrument.trim(),
  station: draft.station,
  ...(draft.note.trim() === '' ? {} : { note: draft.note.trim() }),
});

/** One operation told as done, with its own signature: a test, an inspection, or work caught up elsewhere. */
export const RecordForm = ({
  card,
  then,
}: {
  readonly card: Card;
  readonly then: Card | null;
}): ReactNode => {
  const { t, say } = useSpeech();
  const { section, station, close, told } = useWork();
  const telling = useTelling();
  const empty: RecordDraft = {
    typed: {},
    except: card.except,
    proof: 'signed',
    photos: [],
    instrument: '',
    station: station.id,
    note: '',
  };
  const { draft, change, forget } = useDraft(`${section.serial}/${card.operation}`, empty);
  const tally = tallyOf([card], () => draft.typed);
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const result = await telling.send('work', bodyOf(card, draft, section.serial));
    if (result !== 'turned-down') forget();
    told(result, t('told.work', { work: say(card.name) }), { card, then });
  };
  const part = { card, draft, change };
  const photoNeeded = card.photo === 'always' || draft.proof === 'seen';
  return (
    <form className="panel-form stack" onSubmit={(event) => void submit(event)}>
      <PanelHead title={say(card.name)} close={close} />
      <Caution card={card} />
      <ProofChoice {...part} />
      <Values {...part} />
      {card.instrument !== null && (
        <ScannedField
          name={t('record.instrument', { kind: card.instrument })}
          value={draft.instrument}
          change={(instrument) => change({ instrument })}
        />
      )}
      {(card.photo !== 'none' || draft.proof !== 'signed') && (
        <PhotoEntry photos={draft.photos} needed={photoNeeded} change={(photos) => change({ photos })} />
      )}
      <ExceptPlaces except={draft.except} change={(except) => change({ except })} />
      <More {...part} />
      <FormFoot
        telling={telling}
        action={t('record.sign', { work: say(card.name) })}
        ready={tally.unreadable === 0}
      >
        <TallySays tally={tally} />
      </FormFoot>
    </form>
  );
};
