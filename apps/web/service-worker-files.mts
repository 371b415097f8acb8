import { createHash } from 'node:crypto';
import { resolve } from 'node:path';
import type { Plugin, Rolldown } from 'vite';

type Bundle = Rolldown.OutputBundle;
const NAME = 'service-worker.js';

/** Screens a desk opens are kept once they have been opened; a tablet has no use for them. */
const OFFICE = /\/screens\/(?!station\/|start\/|sign-in\/)|\/words\/(?:en|es)\/office|barcode/;

/** What the floor may load, beginning with the page: imports, and chunks that are loaded later. */
const floorChunks = (bundle: Bundle): ReadonlySet<string> => {
  const seen = new Set<string>();
  const visit = (file: string): void => {
    const chunk = bundle[file];
    if (seen.has(file) || chunk?.type !== 'chunk') return;
    if (chunk.isDynamicEntry && OFFICE.test(chunk.facadeModuleId ?? '')) return;
    seen.add(file);
    [...chunk.imports, ...chunk.dynamicImports].forEach(visit);
  };
  Object.values(bundle)
    .filter((output) => output.type === 'chunk' && output.isEntry && output.fileName !== NAME)
    .forEach(({ fileName }) => visit(fileName));
  return seen;
};

/** Styles are small and shared; of the fonts, the form every browser of these years reads. */
const isKept = (file: string): boolean => /\.(?:css|woff2|wasm)$/.test(file);

/** The service worker as a file of its own, with the list of what it keeps written into it. */
export const serviceWorkerFiles = (root: string): Plugin => ({
  name: 'studbook-service-worker',
  buildStart() {
    this.emitFile({
      type: 'chunk',
      id: resolve(root, 'src/worker/service-worker.ts'),
      fileName: NAME,
    });
  },
  generateBundle(_options, bundle) {
    const chunks = floorChunks(bundle);
    const files = Object.keys(bundle)
      .filter((file) => chunks.has(file) || isKept(file))
      .map((file) => `/${file}`)
      .sort();
    const worker = bundle[NAME];
    if (worker?.type !== 'chunk') throw new Error(`The build has no ${NAME}`);
    if (worker.imports.length > 0) throw new Error(`${NAME} has to stand alone`);
    const version = createHash('sha256').update(files.join('\n')).digest('hex').slice(0, 16);
    worker.code = worker.code
      .replace(/["'`]__FILES__["'`]/, JSON.stringify(JSON.stringify(['/mark.svg', ...files])))
      .replace('__VERSION__', version);
  },
});
