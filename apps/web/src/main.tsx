import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app';
import { DisplayProvider } from './look/display';
import { SessionProvider } from './session/session';
import { registerWorker } from './worker/register';
import { SpeechProvider } from './words/words';
import './look/base.css';
import './look/frame.css';
import './look/marks.css';

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has no element with the id "root"');

createRoot(root).render(
  <StrictMode>
    <DisplayProvider>
      <SpeechProvider>
        <SessionProvider>
          <App />
        </SessionProvider>
      </SpeechProvider>
    </DisplayProvider>
  </StrictMode>,
);

registerWorker();
