import type { ReactNode } from 'react';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';
import { ApprovePart } from './approve-part';
import { ChangePart } from './change-part';
import { HistoryPart } from './history-part';
import { ReadPart } from './read-part';
import './rulebook.css';

const MANAGERS: readonly string[] = ['quality-manager', 'administrator'];

const PARTS: readonly (readonly [string, WordKey])[] = [
  ['read', 'book.read'],
  ['change', 'book.change'],
  ['approve', 'book.approve'],
  ['history', 'book.history'],
];

/** The rulebook: read by everyone, changed by one and approved by another, run over history. */
export const RulebookScreen = ({ part }: { readonly part: string | null }): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSignedIn();
  const manages = me.roles.some((role) => MANAGERS.includes(role));
  const shown = part ?? 'read';
  return (
    <main className="page stack" id="main">
      <nav className="row no-print" aria-label={t('nav.rulebook')}>
        {PARTS.filter(([id]) => manages || id !== 'change').map(([id, word]) => (
          <Link
            key={id}
            className="button"
            to={id === 'read' ? places.rulebook : places.rulebookPart(id)}
            aria-current={id === shown ? 'page' : undefined}
          >
            {t(word)}
          </Link>
        ))}
      </nav>
      {partOf(shown, manages)}
    </main>
  );
};

const partOf = (part: string, manages: boolean): ReactNode => {
  if (part === 'change' && manages) return <ChangePart />;
  if (part === 'approve') return <ApprovePart manages={manages} />;
  if (part === 'history') return <HistoryPart />;
  return <ReadPart />;
};
