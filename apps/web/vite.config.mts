import { resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { WITHOUT_PARSER, compiledWords } from './compiled-words.mts';
import { serviceWorkerFiles } from './service-worker-files.mts';

const project = resolve(import.meta.dirname, '../..');
const lib = (name: string) => resolve(project, `libs/${name}/src/index.ts`);

/** `STUDBOOK_API` points a development server at a running plant. */
const api = process.env.STUDBOOK_API ?? 'http://127.0.0.1:4300';

export default defineConfig({
  root: import.meta.dirname,
  plugins: [compiledWords(), react(), serviceWorkerFiles(import.meta.dirname)],
  resolve: {
    alias: {
      ...WITHOUT_PARSER,
      '@libs/kernel': lib('kernel'),
      '@libs/contracts': lib('contracts'),
      '@libs/judge': lib('judge'),
      '@libs/proof': lib('proof'),
    },
  },
  build: {
    outDir: resolve(project, 'dist/web'),
    emptyOutDir: true,
    target: 'es2022',
    // Fonts stay files of their own: a data: address would need a wider content security policy.
    assetsInlineLimit: 0,
    // Our libraries do nothing by being read: what is not used of them, schemas above all, stays out.
    rolldownOptions: { treeshake: { moduleSideEffects: (id) => !/\/libs\/\w+\/src\//.test(id) } },
    // The budget test reads it to follow what each screen loads.
    manifest: true,
  },
  server: { host: '127.0.0.1', port: 4301, proxy: { '/api': api } },
});
