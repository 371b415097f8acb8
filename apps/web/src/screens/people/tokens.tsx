import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { useQuestion } from '../../api/use-question';
import { ChoiceField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import { roleWord } from '../sign-in/roles';

const NOTHING = {};
const ROLES = ['machine', 'auditor', 'quality-manager', 'station-lead'] as const;

const SCOPE_WORDS = {
  read: 'scope.read',
  figures: 'scope.figures',
  work: 'scope.work',
  equipment: 'scope.equipment',
  orders: 'scope.orders',
} as const;
const SCOPES = ['read', 'figures', 'work', 'equipment', 'orders'] as const;

const Made = ({ token }: { readonly token: string }): ReactNode => {
  const { t } = useSpeech();
  return (
    <div className="notice proven" role="status">
      <p className="grow">
        {t('people.token-once')} <code className="token">{token}</code>
      </p>
    </div>
  );
};

/** Programs come in by tokens: what each may do, and when it last came. */
export const Tokens = (): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const { answer, trouble, again } = useQuestion('tokens', NOTHING);
  const [name, setName] = useState('');
  const [role, setRole] = useState<string>(ROLES[0]);
  const [scope, setScope] = useState('');
  const [made, setMade] = useState<string | null>(null);
  const [stuck, setStuck] = useState<Trouble | null>(null);
  const make = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const result = await ask(
      'token',
      {},
      { body: { name: name.trim(), role, ...(scope === '' ? {} : { scopes: [scope] }) } },
    );
    setStuck(result.ok ? null : result.trouble);
    if (!result.ok) return;
    setMade(result.answer.token);
    setName('');
    again();
  };
  const end = async (token: string): Promise<void> => {
    const result = await ask('tokenEnd', { token }, { body: {} });
    setStuck(result.ok ? null : result.trouble);
    if (result.ok) again();
  };
  const problem = stuck ?? trouble;
  return (
    <section className="stack" aria-labelledby="tokens">
      <h2 id="tokens">{t('people.tokens')}</h2>
      <form className="row token-form" onSubmit={(event) => void make(event)}>
        <label className="field grow">
          <span className="field-name">{t('people.token-for')}</span>
          <input
            className="input"
            value={name}
            maxLength={80}
            onChange={(event) => setName(event.target.value)}
          />
        </label>
        <label className="field">
          <span className="field-name">{t('people.token-may')}</span>
          <select className="input" value={role} onChange={(event) => setRole(event.target.value)}>
            {ROLES.map((one) => (
              <option key={one} value={one}>
                {roleWord(one, t)}
              </option>
            ))}
          </select>
        </label>
        <ChoiceField
          name={t('people.token-scope')}
          value={scope}
          none={t('people.scope-all')}
          from={SCOPES.map((id) => ({ id, says: t(SCOPE_WORDS[id]) }))}
          change={setScope}
        />
        <button type="submit" className="button" disabled={name.trim() === ''}>
          {t('people.make-token')}
        </button>
      </form>
      {made !== null && <Made token={made} />}
      {problem !== null && <TroubleNotice trouble={problem} again={again} />}
      {answer?.tokens.length === 0 && <p>{t('people.no-tokens')}</p>}
      <ul className="access-list">
        {answer?.tokens.map((token) => (
          <li key={token.id} className="row spread">
            <span>
              <strong>{token.name}</strong>{' '}
              <span className="quiet">
                {roleWord(token.role ?? '', t)} {token.scopes !== null && `(${token.scopes.join(', ')}) `}·{' '}
                {t('people.token-seen', { seen: times.moment(token.seenAt) })}
              </span>
            </span>
            <button type="button" className="button" onClick={() => void end(token.id)}>
              {t('people.end-token')}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
};
