import type { ReactNode } from 'react';
import { useDisplay } from '../look/display';
import type { Display } from '../look/display';
import { useSpeech } from '../words/words';
import type { WordKey } from '../words/words';

const THEMES = ['auto', 'light', 'dark'] as const satisfies readonly Display['theme'][];
const THEME_WORDS = { auto: 'display.auto', light: 'display.light', dark: 'display.dark' } as const;

type SwitchProps = { readonly name: WordKey; readonly on: boolean; readonly set: (on: boolean) => void };
const OnOff = ({ name, on, set }: SwitchProps): ReactNode => {
  const { t } = useSpeech();
  return (
    <fieldset className="stack tight">
      <legend className="field-name">{t(name)}</legend>
      <div className="choices">
        {[true, false].map((value) => (
          <button
            key={String(value)}
            type="button"
            className="button"
            aria-pressed={on === value}
            onClick={() => set(value)}
          >
            {t(value ? 'on' : 'off')}
          </button>
        ))}
      </div>
    </fieldset>
  );
};

export const DisplayPanel = (): ReactNode => {
  const { t } = useSpeech();
  const { theme, metric, sound, set } = useDisplay();
  return (
    <section className="display" aria-label={t('display')}>
      <fieldset className="stack tight">
        <legend className="field-name">{t('display.theme')}</legend>
        <div className="choices">
          {THEMES.map((name) => (
            <button
              key={name}
              type="button"
              className="button"
              aria-pressed={theme === name}
              onClick={() => set({ theme: name })}
            >
              {t(THEME_WORDS[name])}
            </button>
          ))}
        </div>
      </fieldset>
      <OnOff name="display.metric" on={metric} set={(on) => set({ metric: on })} />
      <OnOff name="display.sound" on={sound} set={(on) => set({ sound: on })} />
    </section>
  );
};
