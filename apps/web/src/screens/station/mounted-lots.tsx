import type { ReactNode } from 'react';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { named } from '../../words/named';
import { useSpeech } from '../../words/words';
import type { SectionFacts } from './cards';

export const MountedLots = ({ section }: { readonly section: SectionFacts }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  if (section.lots.length === 0) return null;
  return (
    <section className="stack tight" aria-labelledby="lots">
      <h2 id="lots">{t('lots')}</h2>
      <ul className="lots">
        {section.lots.map(({ lot, kind, usable }) => (
          <li key={lot} className="row">
            <Mark name={usable ? 'proven' : 'refused'} />
            <span>{say(named(plant.lotKinds, kind))}</span>
            <span className="mono">{lot}</span>
            {!usable && <strong>{t('lot.not-usable')}</strong>}
          </li>
        ))}
      </ul>
    </section>
  );
};
