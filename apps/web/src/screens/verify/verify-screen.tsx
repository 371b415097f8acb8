import { useId, useState } from 'react';
import type { DragEvent, ReactNode } from 'react';
import { allProven, outcomeSays, verifyPacked } from '@libs/proof';
import type { Outcome } from '@libs/proof';
import { Mark } from '../../ui/mark';
import type { MarkName } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';
import { BROWSER_TOOLS } from './browser-tools';
import './verify.css';

/** A packet is judged here, in this browser: no file leaves it, and no server is asked. */
export const VerifyScreen = (): ReactNode => {
  const { t } = useSpeech();
  const [packet, setPacket] = useState<File | null>(null);
  const [checkpoint, setCheckpoint] = useState<File | null>(null);
  const [key, setKey] = useState('');
  const [outcomes, setOutcomes] = useState<readonly Outcome[] | null>(null);

  const judge = async (zip: File | null, held: File | null, text: string): Promise<void> => {
    if (zip === null) return;
    setOutcomes(
      verifyPacked(new Uint8Array(await zip.arrayBuffer()), BROWSER_TOOLS, {
        checkpoint: held === null ? undefined : await held.text(),
        key: text.trim() === '' ? undefined : text,
      }),
    );
  };
  const take = (zip: File | null): void => {
    setPacket(zip);
    void judge(zip, checkpoint, key);
  };
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <h1>{t('verify.title')}</h1>
          <p>{t('verify.says')}</p>
        </div>
      </div>
      <DropPlace name={packet?.name ?? null} onFile={take} />
      <details className="verify-held">
        <summary>{t('verify.held')}</summary>
        <div className="stack">
          <p className="quiet">{t('verify.held-says')}</p>
          <label className="field">
            <span className="field-name">{t('verify.checkpoint')}</span>
            <input
              className="input"
              type="file"
              accept=".txt,text/plain"
              onChange={(event) => {
                const held = event.target.files?.[0] ?? null;
                setCheckpoint(held);
                void judge(packet, held, key);
              }}
            />
          </label>
          <label className="field">
            <span className="field-name">{t('verify.key')}</span>
            <input
              className="input mono"
              value={key}
              autoComplete="off"
              spellCheck={false}
              onChange={(event) => {
                setKey(event.target.value);
                void judge(packet, checkpoint, event.target.value);
              }}
            />
          </label>
        </div>
      </details>
      <div aria-live="polite">{outcomes !== null && <Verdict outcomes={outcomes} />}</div>
    </main>
  );
};

type Drop = { readonly name: string | null; readonly onFile: (file: File | null) => void };

const DropPlace = ({ name, onFile }: Drop): ReactNode => {
  const { t } = useSpeech();
  const id = useId();
  const [over, setOver] = useState(false);
  const dropped = (event: DragEvent): void => {
    event.preventDefault();
    setOver(false);
    const [file] = event.dataTransfer.files;
    if (file !== undefined) onFile(file);
  };
  return (
    <div
      className={over ? 'verify-drop over' : 'verify-drop'}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={dropped}
    >
      <label htmlFor={id} className="field-name">
        {name === null ? t('verify.drop') : t('verify.dropped', { name })}
      </label>
      <input
        id={id}
        className="input"
        type="file"
        accept=".zip,application/zip"
        onChange={(event) => onFile(event.target.files?.[0] ?? null)}
      />
    </div>
  );
};

const PARTS: readonly (readonly [Outcome['is'], WordKey, MarkName])[] = [
  ['failed', 'verify.failed', 'refused'],
  ['proven', 'verify.proven', 'proven'],
  ['open', 'verify.open', 'waiting'],
];

const Verdict = ({ outcomes }: { readonly outcomes: readonly Outcome[] }): ReactNode => {
  const { t, say } = useSpeech();
  const proven = allProven(outcomes);
  return (
    <div className="stack">
      <p className={proven ? 'verify-verdict' : 'verify-verdict wrong'} role="status">
        <Mark name={proven ? 'proven' : 'refused'} size={32} />
        {t(proven ? 'verify.yes' : 'verify.no')}
      </p>
      {PARTS.map(([is, title, mark]) => {
        const said = outcomes.filter((outcome) => outcome.is === is);
        return (
          said.length > 0 && (
            <section key={is} aria-labelledby={`verify-${is}`}>
              <h2 id={`verify-${is}`}>{t(title)}</h2>
              <ul className="verify-list">
                {said.map((outcome, n) => (
                  <li key={n}>
                    <Mark name={mark} size={20} />
                    <span>{say(outcomeSays(outcome))}</span>
                  </li>
                ))}
              </ul>
            </section>
          )
        );
      })}
      <p className="quiet small">{t('verify.authority')}</p>
    </div>
  );
};
