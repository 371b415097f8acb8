import { checkCharacter } from '@libs/kernel';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { useSignedIn } from '../../session/session';
import { Barcode } from '../../ui/barcode';
import { Serial } from '../../ui/serial';
import { useSpeech } from '../../words/words';
import { SquareCode } from './square-code';
import './paper-label.css';

type Props = { readonly kind: 'serial' | 'lot'; readonly code: string };
const STOCKS = ['stock', 'letter'] as const;
type Stock = (typeof STOCKS)[number];
const STOCK_WORDS = { stock: 'paper-label.stock', letter: 'paper-label.letter' } as const;
/** Two columns of five: a letter sheet of 4 by 2 inch labels. */
const ON_A_SHEET = 10;

/** Bars for a scanner, squares for a camera, letters for a person, and a character that tells a slip of the pen. */
const PaperLabel = ({ code }: Pick<Props, 'code'>): ReactNode => {
  const { t } = useSpeech();
  const { plant } = useSignedIn();
  return (
    <article className="paper-label">
      <SquareCode of={code} />
      <div>
        <p className="paper-label-code">
          <Serial of={code} />
        </p>
        <p>{t('paper-label.check', { check: checkCharacter(code) ?? '' })}</p>
        <p>{plant.name}</p>
      </div>
      <Barcode of={code} />
    </article>
  );
};

/** Labels of a section or a lot, for label stock or a letter sheet; a PDF by the browser's print. */
export const PaperLabelScreen = ({ kind, code }: Props): ReactNode => {
  const { t } = useSpeech();
  const [stock, setStock] = useState<Stock>('stock');
  return (
    <main className={`page stack labels-on-${stock}`} id="main">
      <div className="page-head no-print">
        <div>
          <h1>{t(kind === 'lot' ? 'paper-label.title-lot' : 'paper-label.title-serial', { code })}</h1>
          <p>{t('paper-label.copies')}</p>
          <p>{t('paper-label.typed')}</p>
        </div>
        <button type="button" className="button primary" onClick={() => window.print()}>
          {t('print')}
        </button>
      </div>
      <div className="choices no-print">
        {STOCKS.map((name) => (
          <button
            key={name}
            type="button"
            className="button choice"
            aria-pressed={stock === name}
            onClick={() => setStock(name)}
          >
            {t(STOCK_WORDS[name])}
          </button>
        ))}
      </div>
      <div className="paper-labels">
        {Array.from({ length: stock === 'letter' ? ON_A_SHEET : 1 }, (_, at) => (
          <PaperLabel key={at} code={code} />
        ))}
      </div>
    </main>
  );
};
