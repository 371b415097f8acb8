import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { Serial } from '../../ui/serial';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { TakePackets } from './take-packets';

type Drawn = AnswerOf<'sample'>;
const LEVELS = ['S-1', 'S-2', 'S-3', 'S-4', 'I', 'II', 'III'] as const;
const LIMITS = ['0.65', '1.0', '1.5', '2.5', '4.0', '6.5', '10'] as const;

const DAY_MS = 86_400_000;
/** A quarter, which is how often an auditor comes. */
const SPAN_DAYS = 90;
const dayBefore = (days: number): string => new Date(Date.now() - days * DAY_MS).toISOString().slice(0, 10);

type Wish = {
  readonly from: string;
  readonly to: string;
  readonly level: string;
  readonly limit: string;
  readonly seed: string;
};

/** A draw nobody can steer: the seed is shown, kept on record, and gives the same homes again. */
export const Sample = (): ReactNode => {
  const { t } = useSpeech();
  const [wish, setWish] = useState<Wish>({
    from: dayBefore(SPAN_DAYS),
    to: dayBefore(0),
    level: 'II',
    limit: '2.5',
    seed: '',
  });
  const [drawn, setDrawn] = useState<Drawn | null>(null);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const change = (part: Partial<Wish>): void => setWish((before) => ({ ...before, ...part }));

  const draw = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const { seed, ...rest } = wish;
    const result = await ask(
      'sample',
      {},
      { body: { ...rest, ...(seed.trim() === '' ? {} : { seed: seed.trim() }) } },
    );
    setTrouble(result.ok ? null : result.trouble);
    setDrawn(result.ok ? result.answer : null);
  };
  return (
    <section className="stack" aria-labelledby="sample">
      <h2 id="sample">{t('audit.sample')}</h2>
      <form className="row sample-form" onSubmit={(event) => void draw(event)}>
        <Dated says={t('audit.from')} value={wish.from} change={(from) => change({ from })} />
        <Dated says={t('audit.to')} value={wish.to} change={(to) => change({ to })} />
        <Chosen
          says={t('audit.level')}
          all={LEVELS}
          value={wish.level}
          change={(level) => change({ level })}
        />
        <Chosen
          says={t('audit.limit')}
          all={LIMITS}
          value={wish.limit}
          change={(limit) => change({ limit })}
        />
        <label className="field">
          <span className="field-name">{t('audit.seed')}</span>
          <input
            className="input mono"
            value={wish.seed}
            maxLength={64}
            placeholder={t('audit.seed-drawn')}
            onChange={(event) => change({ seed: event.target.value })}
          />
        </label>
        <button type="submit" className="button primary">
          {t('audit.draw')}
        </button>
      </form>
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      {drawn !== null && <DrawnHomes drawn={drawn} />}
    </section>
  );
};

const Dated = (props: {
  readonly says: string;
  readonly value: string;
  readonly change: (day: string) => void;
}): ReactNode => (
  <label className="field">
    <span className="field-name">{props.says}</span>
    <input
      className="input"
      type="date"
      required
      value={props.value}
      onChange={(event) => props.change(event.target.value)}
    />
  </label>
);

const Chosen = (props: {
  readonly says: string;
  readonly all: readonly string[];
  readonly value: string;
  readonly change: (one: string) => void;
}): ReactNode => (
  <label className="field">
    <span className="field-name">{props.says}</span>
    <select className="input" value={props.value} onChange={(event) => props.change(event.target.value)}>
      {props.all.map((one) => (
        <option key={one}>{one}</option>
      ))}
    </select>
  </label>
);

const DrawnHomes = ({ drawn }: { readonly drawn: Drawn }): ReactNode => {
  const { t } = useSpeech();
  const { lot, letter, size, accept, reject, seed, homes } = drawn;
  return (
    <div className="stack" role="status">
      <p>{t('audit.drawn', { lot, letter, size, accept, reject })}</p>
      <p>
        {t('audit.drawn-seed')} <strong className="mono">{seed}</strong>
      </p>
      <ul className="drawn-homes">
        {homes.map((home) => (
          <li key={home}>
            <Link to={places.home(home)} className="audit-home">
              <Serial of={home} />
            </Link>
          </li>
        ))}
      </ul>
      <TakePackets homes={homes} name={`sample-${seed}`} />
    </div>
  );
};
