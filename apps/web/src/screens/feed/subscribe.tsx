import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';

type Wish = {
  readonly kind: 'url' | 'mail';
  readonly target: string;
  readonly every: boolean;
  readonly named: string;
  readonly alarms: boolean;
  readonly checkpoints: boolean;
  readonly clocks: boolean;
  readonly fromStart: boolean;
};
const EMPTY: Wish = {
  kind: 'url',
  target: '',
  every: false,
  named: '',
  alarms: true,
  checkpoints: false,
  clocks: false,
  fromStart: false,
};

type PartProps = { readonly wish: Wish; readonly change: (part: Partial<Wish>) => void };

type TickProps = { readonly word: WordKey; readonly on: boolean; readonly set: (on: boolean) => void };
const Tick = ({ word, on, set }: TickProps): ReactNode => {
  const { t } = useSpeech();
  return (
    <label className="check">
      <input type="checkbox" checked={on} onChange={(event) => set(event.target.checked)} />
      {t(word)}
    </label>
  );
};

const Road = ({ wish, change, hasMail }: PartProps & { readonly hasMail: boolean }): ReactNode => {
  const { t } = useSpeech();
  return (
    <>
      <div className="choices" role="group" aria-label={t('feed.road')}>
        {(['url', 'mail'] as const).map((kind) => (
          <button
            key={kind}
            type="button"
            className="button choice"
            aria-pressed={wish.kind === kind}
            disabled={kind === 'mail' && !hasMail}
            onClick={() => change({ kind })}
          >
            {t(kind === 'url' ? 'feed.by-web' : 'feed.by-mail')}
          </button>
        ))}
      </div>
      {!hasMail && <p className="quiet small">{t('feed.no-mail')}</p>}
      <TextField
        name={t(wish.kind === 'url' ? 'feed.web-address' : 'feed.mail-address')}
        value={wish.target}
        mono
        change={(target) => change({ target })}
      />
    </>
  );
};

/** Events of the record are sent to programs, by an administrator; news for people is anyone's who may subscribe. */
const What = ({ wish, change, all }: PartProps & { readonly all: boolean }): ReactNode => {
  const { t } = useSpeech();
  return (
    <fieldset className="stack tight">
      <legend className="field-name">{t('feed.what')}</legend>
      <Tick word="feed.alarms" on={wish.alarms} set={(alarms) => change({ alarms })} />
      <Tick word="feed.clocks" on={wish.clocks} set={(clocks) => change({ clocks })} />
      {all && (
        <Tick word="feed.checkpoints" on={wish.checkpoints} set={(checkpoints) => change({ checkpoints })} />
      )}
      {all && wish.kind === 'url' && (
        <>
          <Tick word="feed.all-events" on={wish.every} set={(every) => change({ every })} />
          {!wish.every && (
            <TextField
              name={t('feed.events')}
              hint={t('feed.events-hint')}
              value={wish.named}
              mono
              change={(named) => change({ named })}
            />
          )}
          <Tick word="feed.from-start" on={wish.fromStart} set={(fromStart) => change({ fromStart })} />
        </>
      )}
    </fieldset>
  );
};

const namesIn = (text: string): string[] => text.split(/[\s,;]+/).filter((name) => name !== '');

const bodyOf = (wish: Wish, all: boolean, language: 'en' | 'es') => {
  const events = wish.every ? ('all' as const) : namesIn(wish.named);
  return {
    kind: wish.kind,
    target: wish.target.trim(),
    language,
    fromStart: wish.fromStart,
    wants: {
      events: all && wish.kind === 'url' ? events : [],
      alarms: wish.alarms,
      checkpoints: all && wish.checkpoints,
      clocks: wish.clocks,
    },
  };
};

type Props = {
  readonly hasMail: boolean;
  /** Whether events of the record and checkpoints are theirs to send. */
  readonly all: boolean;
  readonly made: (secret: string | null) => void;
};

export const Subscribe = ({ hasMail, all, made }: Props): ReactNode => {
  const { t, language } = useSpeech();
  const [wish, setWish] = useState(EMPTY);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const change = (part: Partial<Wish>): void => setWish((before) => ({ ...before, ...part }));
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const result = await ask('feedSubscription', {}, { body: bodyOf(wish, all, language) });
    setTrouble(result.ok ? null : result.trouble);
    if (!result.ok) return;
    setWish(EMPTY);
    made(result.answer.secret);
  };
  return (
    <form className="stack person-form" aria-labelledby="subscribe" onSubmit={(event) => void submit(event)}>
      <h2 id="subscribe">{t('feed.subscribe')}</h2>
      <Road wish={wish} change={change} hasMail={hasMail} />
      <What wish={wish} change={change} all={all} />
      <p className="quiet small">{t('feed.nobody')}</p>
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      <div>
        <button type="submit" className="button primary" disabled={wish.target.trim() === ''}>
          {t('feed.send-there')}
        </button>
      </div>
    </form>
  );
};
