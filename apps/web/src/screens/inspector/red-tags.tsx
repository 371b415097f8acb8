import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useTell } from '../../api/use-tell';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { TextField } from '../../ui/field';
import { Mark } from '../../ui/mark';
import { useNow } from '../../ui/now';
import { Serial } from '../../ui/serial';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { Agency, Part } from './agency';

type Tag = Agency['tags'][number];

const TagRow = ({ tag, again, isTheirs }: { readonly tag: Tag } & Omit<Part, 'agency'>): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const now = useNow();
  const telling = useTell(again);
  const lift = (): void => {
    void telling.send('redTagLifting', { serial: tag.subject }, { tag: tag.redTag });
  };
  return (
    <li>
      <Mark name="red-tag" size={28} />
      <div className="grow">
        <strong className="mono">{tag.redTag}</strong>{' '}
        <Link to={places.home(tag.subject)}>
          <Serial of={tag.subject} />
        </Link>
      </div>
      <p className="age">{tag.since === null ? '' : times.since(tag.since, now)}</p>
      <Link className="button plain no-print" to={places.tag(tag.subject, tag.hold)}>
        {t('holds.print')}
      </Link>
      {isTheirs && (
        <button type="button" className="button no-print" disabled={telling.busy} onClick={lift}>
          {t('agency.lift')}
        </button>
      )}
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
    </li>
  );
};

const Place = ({ again }: { readonly again: () => void }): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(again);
  const [serial, setSerial] = useState('');
  const [tag, setTag] = useState('');
  const [rule, setRule] = useState('');
  const [note, setNote] = useState('');
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const body = {
      serial: serial.trim(),
      tag: tag.trim(),
      rule: rule.trim() === '' ? null : rule.trim(),
      ...(note.trim() === '' ? {} : { note: note.trim() }),
    };
    if ((await telling.send('redTag', body)) === undefined) return;
    setSerial('');
    setTag('');
    setNote('');
  };
  return (
    <form className="office-form no-print" onSubmit={(event) => void submit(event)}>
      <h3>{t('agency.place-tag')}</h3>
      <TextField name={t('holds.section')} value={serial} change={setSerial} mono />
      <TextField name={t('agency.tag-number')} value={tag} change={setTag} mono />
      <TextField name={t('agency.rule')} value={rule} change={setRule} hint={t('agency.rule-hint')} />
      <TextField name={t('holds.note')} value={note} change={setNote} />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <button
        type="submit"
        className="button primary"
        disabled={telling.busy || serial.trim() === '' || tag.trim() === ''}
      >
        {t('agency.place')}
      </button>
    </form>
  );
};

export const RedTags = ({ agency, again, isTheirs }: Part): ReactNode => {
  const { t } = useSpeech();
  return (
    <section className="stack" aria-labelledby="tags">
      <h2 id="tags">{t('agency.tags', { count: agency.tags.length })}</h2>
      <div className="office-grid">
        <ul className="rows">
          {agency.tags.map((tag) => (
            <TagRow key={tag.hold} tag={tag} again={again} isTheirs={isTheirs} />
          ))}
        </ul>
        {isTheirs && <Place again={again} />}
      </div>
    </section>
  );
};
