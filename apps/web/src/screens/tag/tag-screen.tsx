import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { Barcode } from '../../ui/barcode';
import { Mark } from '../../ui/mark';
import { TroubleNotice } from '../../ui/trouble';
import { named } from '../../words/named';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import './tag.css';

type Hold = AnswerOf<'holds'>['holds'][number];
const EVERYTHING = {};

/** Both languages, whoever prints it: whoever reads it may speak the other. */
const Both = ({ says }: { readonly says: Hold['says'] }): ReactNode => (
  <>
    <p lang="en">{says.en}</p>
    {says.es !== says.en && <p lang="es">{says.es}</p>}
  </>
);

const Tag = ({ hold }: { readonly hold: Hold }): ReactNode => {
  const { t } = useSpeech();
  const { plant } = useSignedIn();
  const times = useTimes();
  const isRed = hold.redTag !== null;
  return (
    <article className={isRed ? 'paper-tag red' : 'paper-tag'}>
      <header>
        <Mark name={isRed ? 'red-tag' : 'held'} size={72} />
        <div>
          <h1>{isRed ? t('tag.red') : t('tag.hold')}</h1>
          {isRed && <p className="tag-number mono">{hold.redTag}</p>}
        </div>
      </header>
      <Barcode of={hold.subject} />
      <p className="tag-serial mono">{hold.subject}</p>
      <div className="tag-says">
        <Both says={hold.says} />
      </div>
      <dl>
        <div>
          <dt>{t('tag.since')}</dt>
          <dd>{hold.since === null ? '' : times.moment(hold.since)}</dd>
        </div>
        <div>
          <dt>{t('tag.at')}</dt>
          <dd>
            {hold.station === null
              ? ''
              : `${named(plant.stations, hold.station).en} · ${named(plant.stations, hold.station).es}`}
          </dd>
        </div>
        <div>
          <dt>{t('tag.signed')}</dt>
          <dd className="line-to-write" />
        </div>
      </dl>
      <p className="tag-rule">{t(isRed ? 'tag.red-rule' : 'tag.hold-rule')}</p>
      <footer>
        <p>{plant.name}</p>
        <p className="mono">{hold.hold}</p>
        <p>{t('tag.page')}</p>
      </footer>
    </article>
  );
};

/** A hold tag or a red tag on one sheet, black on white, with the serial as Code 128. */
export const TagScreen = ({
  serial,
  hold,
}: {
  readonly serial: string;
  readonly hold: string;
}): ReactNode => {
  const { t } = useSpeech();
  const { answer, trouble, again } = useQuestion('holds', EVERYTHING);
  const found = answer?.holds.find((one) => one.subject === serial && one.hold === hold);
  return (
    <main className="page" id="main" aria-busy={answer === null}>
      <div className="row spread no-print">
        <Link className="button" to={places.holds}>
          {t('nav.holds')}
        </Link>
        <button type="button" className="button primary" onClick={() => window.print()}>
          {t('print')}
        </button>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {answer !== null && found === undefined && <h1>{t('tag.over')}</h1>}
      {found !== undefined && <Tag hold={found} />}
    </main>
  );
};
